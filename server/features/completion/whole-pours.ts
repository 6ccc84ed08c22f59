/** At the start of a line: what the house pours with the amount it pours most, anything else with an amount to fill in. */
import { findFieldIn } from "../../house/entry.ts";
import { settingsOf } from "../../house/settings.ts";
import { writtenName } from "../../house/write.ts";
import { type Called, lookOf, type Named, namedFor, pouringOf } from "./names.ts";
import { type Asked, comma, type Group, type Offer } from "./offer.ts";
import { pourable } from "./pours.ts";

/** As many as the letters typed leave. */
export function wholePours(asked: Asked, start: number): Group {
  const { named, isLong } = namedFor(asked, pourable, asked.before.slice(start));
  return { start, until: comma, offers: named.map((one) => wholePour(asked, one)), isLong };
}

function wholePour(asked: Asked, { called, near, count }: Named): Offer {
  const { name, calls, nameClass } = called;
  const written = writtenName(name);
  const about = { what: nameClass === "drink" ? "drink" : "ingredient", name } as const;
  const common = { ...lookOf(called), filter: name, near, used: count, about };
  const amount = count > 0 ? asked.usage().poured(pouringOf(asked.entry), calls).amount : undefined;
  if (amount) return { ...common, label: `${amount} ${written}` };
  const { usual, unit } = placeholderFor(asked, called);
  const snippet = `\${1:${usual}}${unit ? ` ${unit}` : ""} ${written.replace(/[$}\\]/g, "\\$&")}`;
  return { ...common, label: name, ...(written !== name && { text: written }), snippet };
}

/** What to start from by kind, where nothing was poured yet: an amount to fill in, no claim. Practice, no source. */
const placeholders: Readonly<Record<string, { readonly usual: string; readonly unit: string }>> = {
  bitters: { usual: "2", unit: "dashes" },
  egg: { usual: "1", unit: "" },
  fruit: { usual: "1", unit: "" },
  vegetable: { usual: "1", unit: "" },
  herb: { usual: "6", unit: "" },
  sugar: { usual: "5", unit: "g" },
  acid: { usual: "1", unit: "g" },
  salt: { usual: "1", unit: "pinch" },
  spice: { usual: "1", unit: "pinch" },
};
const byUnits = { ml: { usual: "25", unit: "ml" }, cl: { usual: "2.5", unit: "cl" }, oz: { usual: "1", unit: "oz" } } as const;

function placeholderFor({ house, scope }: Asked, { name, nameClass }: Called) {
  const stated = house.lookup(scope, nameClass, name).flatMap(({ entry }) => findFieldIn(entry, "kind")?.field.value?.text ?? [])[0];
  return placeholders[stated?.toLowerCase() ?? ""] ?? byUnits[settingsOf(house, scope).units];
}

/**
 * Drinks of no bar: drawn by chance within what bars pour, each number as uncertain as the house takes
 * it to be (`server/house/`): a jigger of 2.5 ml steps, labels and larder ranges, a thermometer's degree.
 */
import type { Model, PourPlan, Price, ServePlan, StockModel, SugarName, Uncertain } from "../../server/engine/plan.ts";
import { exactly, plan, pour, prep, step, stock } from "../engine/plans.ts";
import type { Chance } from "./chance.ts";

/** What stands at one temperature is one and the same figure in every pour of a drink. */
interface Bar {
  readonly room: Uncertain;
  readonly fridge: Uncertain;
  readonly freezer: Uncertain;
  readonly hot: Uncertain;
}

const methods = ["shake", "stir", "build", "throw", "roll", "churn", "swizzle", "blend", "whip shake", "fine strain"] as const;

/** One to eight pours, a method with its ice, a glass. */
export function randomDrink(chance: Chance): ServePlan {
  const bar: Bar = { room: exactly(20, 2), fridge: exactly(4, 1.5), freezer: exactly(-18, 2), hot: exactly(85, 5) };
  const pours = [spirit(chance, bar)];
  const sometimes = (share: number, make: (chance: Chance, bar: Bar) => PourPlan) => {
    if (chance.often(share)) pours.push(make(chance, bar));
  };
  for (const [share, make] of [
    [0.15, spirit],
    [0.25, wine],
    [0.4, liqueur],
    [0.6, citrus],
    [0.25, juice],
    [0.6, syrup],
    [0.15, eggWhite],
    [0.25, coffee],
    [0.3, bitters],
    [0.25, saline],
    [0.25, sodaAfter],
  ] as const)
    sometimes(share, make);
  const kind = chance.one(["cubed", "cubed", "cubed", "cracked", "crushed"] as const);
  const method = chance.one(methods);
  // A price is certain, what is wasted is not.
  const price: Price = { amount: exactly(0.03), per: "ml", waste: exactly(0.05, 0.01) };
  const priced = pours.map((one) => ({ ...one, price }));
  return plan(priced, [step(method, chance.often(0.5) ? { seconds: chance.whole(6, 30) } : {})], {
    ice: {
      kind,
      temperatureC: chance.often(0.8) ? exactly(0, 1) : exactly(-12, 2),
      ...(chance.often(0.3) && { massG: exactly(chance.between(120, 250), 8) }),
    },
    ambientC: bar.room,
    glass: { capacityMl: around(chance.between(150, 400), 0.03), washline: 0.9 },
    ...(chance.often(0.4) && { serveIceG: around(chance.between(60, 180), 0.2) }),
  });
}

const around = (value: number, share: number): Uncertain => exactly(value, share * value);
/** A label is right to 0.3 % vol, the larder's range of a kind to a few. */
const strength = (chance: Chance, low: number, high: number) =>
  exactly(chance.between(low, high), chance.one([0.3 / Math.sqrt(3), 0.6, 1.25]));
const jigger = (ml: number): PourPlan["amount"] => ({ ml: exactly(2.5 * Math.round(ml / 2.5), 2.5 / 2 / Math.sqrt(3)) });
const stated = (chance: Chance) => chance.one([0.03, 0.05, 0.075]);

function poured(chance: Chance, of: Model, fromMl: number, toMl: number, temperatureC: Uncertain): PourPlan {
  return pour(of, jigger(chance.between(fromMl, toMl)), { temperatureC });
}

function spirit(chance: Chance, bar: Bar): PourPlan {
  return poured(chance, stock("spirit", { abv: strength(chance, 37, 57) }), 20, 60, chance.one([bar.room, bar.room, bar.freezer]));
}

function wine(chance: Chance, bar: Bar): PourPlan {
  const sugar = around(chance.between(0.4, 15), stated(chance));
  const acid = around(chance.between(0.45, 0.65), 0.08);
  const of = stock("wine", { abv: strength(chance, 11, 20), sugar, sugarKind: "invert", acid, acidKind: "tartaric" });
  return poured(chance, of, 10, 60, bar.fridge);
}

function liqueur(chance: Chance, bar: Bar): PourPlan {
  return poured(
    chance,
    stock("liqueur", { abv: strength(chance, 16, 40), sugar: around(chance.between(15, 42), stated(chance)) }),
    7.5,
    30,
    bar.room,
  );
}

function citrus(chance: Chance, bar: Bar): PourPlan {
  const of = stock("citrus juice", { sugar: around(1.7, 0.075), sugarKind: sugarOf(chance), acid: exactly(6, 0.3) });
  return poured(chance, of, 10, 30, chance.one([bar.room, bar.fridge]));
}

function juice(chance: Chance, bar: Bar): PourPlan {
  const label = { sugar: around(chance.between(5, 13), 0.075), sugarKind: sugarOf(chance), acid: around(chance.between(0.4, 2), 0.12) };
  return poured(chance, stock("fruit juice", { ...label, per: chance.one(["100 g", "100 ml"]) }), 20, 60, bar.fridge);
}

const sugarOf = (chance: Chance): SugarName => chance.one(["sucrose", "glucose", "fructose", "invert"] as const);

/** Weighed, as every bar's own syrup is, from a sugar and water; sometimes measured with a refractometer. */
function syrup(chance: Chance, bar: Bar): PourPlan {
  const sugars: StockModel = stock("sugar", {
    sugar: exactly(99.8, 0.1),
    sugarKind: chance.one(["sucrose", "invert"]),
    per: "100 g",
    solid: true,
  });
  const parts = [
    [sugars, { g: exactly(chance.one([100, 150, 200]), 1) }],
    [stock("water", {}), { g: exactly(100, 1) }],
  ] as const;
  const of = prep("syrup", parts, chance.often(0.2) ? { measured: { brix: exactly(chance.between(45, 66), 0.5) } } : {});
  return poured(chance, of, 5, 25, chance.one([bar.room, bar.fridge]));
}

function eggWhite(_chance: Chance, bar: Bar): PourPlan {
  return pour(stock("egg white", { solids: 11, per: "100 g" }), { g: exactly(32, 2) }, { temperatureC: bar.fridge });
}

function coffee(chance: Chance, bar: Bar): PourPlan {
  const label = { acid: exactly(0.6, 0.15), solids: 9, caffeineMg: exactly(172, 20), per: "100 g" } as const;
  return poured(chance, stock("espresso", label), 25, 40, chance.one([bar.hot, bar.room]));
}

function bitters(chance: Chance, bar: Bar): PourPlan {
  const of = stock("bitters", { abv: exactly(44.5, 0.75), sugar: exactly(4, 2) });
  return pour(of, { ml: around(chance.whole(1, 4) * 0.8, 0.25) }, { temperatureC: bar.room });
}

function saline(chance: Chance, bar: Bar): PourPlan {
  return pour(
    stock("saline", { salt: exactly(20, 0.2), per: "100 g" }),
    { ml: around(chance.whole(2, 8) * 0.05, 0.2) },
    { temperatureC: bar.room },
  );
}

function sodaAfter(chance: Chance, bar: Bar): PourPlan {
  const of = stock("mixer", { sugar: around(chance.between(4, 10), stated(chance)), acid: exactly(0.4, 0.05) });
  const amount = chance.one<PourPlan["amount"]>([
    jigger(chance.between(40, 120)),
    { topToMl: exactly(chance.between(220, 300), 3) },
    { top: true },
  ]);
  return pour(of, amount, { stage: "after", temperatureC: bar.fridge });
}

/** The same drink with one pour's amount changed, or one pour more, or one fewer; all else is shared. */
export function riffOf(parent: ServePlan, chance: Chance): ServePlan {
  const index = chance.whole(0, parent.pours.length - 1);
  const one = parent.pours[index]!;
  const change = chance.one(["amount", "more", "fewer"] as const);
  if (change === "fewer" && parent.pours.length > 1) return { ...parent, pours: parent.pours.toSpliced(index, 1) };
  if (change === "amount" && "ml" in one.amount && "value" in one.amount.ml) {
    const { ml } = one.amount;
    return {
      ...parent,
      pours: parent.pours.with(index, { ...one, amount: { ml: { ...ml, value: ml.value * chance.between(0.6, 1.6) } } }),
    };
  }
  const of = stock("liqueur", { abv: strength(chance, 16, 40), sugar: around(chance.between(15, 42), 0.03) });
  return { ...parent, pours: [...parent.pours, pour(of, jigger(chance.between(7.5, 20)), { temperatureC: parent.ambientC })] };
}

/** Service cards in a real browser: nothing is cut off, everything is large enough, and everybody can read them. */
import { beforeAll, describe, expect, test } from "vitest";
import { cardSize } from "../../server/reports/card-paper.ts";
import { cardReport } from "../../server/reports/cards.ts";
import { cardsHtml } from "../../server/reports/cards-html.ts";
import { houseIn, houseOf } from "../house/make.ts";
import { accessFaults, inBrowser, markupFaults } from "./browser.ts";

const browser = inBrowser();

const long = "unreasonably thoroughly clarified grapefruit and sea buckthorn cordial";
const strange = `house Test Room
  country: US
  units: oz
stock plain spirit
  kind: spirit
  abv: 40 %

drink ${"A Very Long Name Indeed ".repeat(12)}
  method: ${Array.from({ length: 60 }, (_, step) => `do the thing with number ${step}`).join("; ")}
  glass: coupe, chilled, polished twice, and turned so that its chip is at the back
  garnish: ${`${"x".repeat(300)} and an expressed zest; `.repeat(4)}grated nutmeg
${Array.from({ length: 45 }, (_, line) => `  ${line + 1} 1/2 oz ${long} ${line}, frozen, stirred in slowly`).join("\n")}
    or 2 oz ${long}, or something like it

drink ${"W".repeat(200)}
  2 oz plain spirit, batched
  1 ${"Ü".repeat(90)}
  some ${"mint & <b>lime</b> ".repeat(40)}

drink Nothing

drink 水割り 🍋
  1 part plain spirit
  123456789123456789 ml ${long}
  top to 300 ml soda water
`;

const houses = { samples: houseIn("samples/halyard-room"), mistakes: houseIn("samples/mistakes"), strange: houseOf(strange) };
const reports = Object.fromEntries(
  Object.entries(houses).map(([name, house]) => {
    const drinks = [...house.documents()].flatMap(({ tree }) => tree.entries).filter(({ kind }) => kind === "drink");
    return [name, cardReport(house, drinks, (uri) => uri)];
  }),
);

interface Seen {
  readonly name: string;
  readonly height: number;
  /** Elements that stand out of their card. */
  readonly out: string[];
  /** The smallest type, and that of the title, in points. */
  readonly text: number;
  readonly title: number;
}

/** In CSS, an inch is 96 px and 72 pt. Half a pixel is rounding. */
const look = `[...document.querySelectorAll(".card")].map((card) => {
  const box = card.getBoundingClientRect();
  const within = [...card.querySelectorAll("*")].filter((one) => !one.closest(".hidden, title"));
  const isOut = (one) => { const r = one.getBoundingClientRect(); return r.left < box.left - 0.5 || r.right > box.right + 0.5 || r.top < box.top - 0.5 || r.bottom > box.bottom + 0.5 || !one.closest("svg") && one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1; };
  const pt = (one) => parseFloat(getComputedStyle(one).fontSize) * 0.75;
  return {
    name: card.querySelector("h2").textContent,
    height: box.height / 96 * 25.4,
    out: within.filter(isOut).map((one) => one.outerHTML.slice(0, 80)),
    text: Math.min(...within.filter((one) => !one.closest("svg")).map(pt)),
    title: pt(card.querySelector("h2")),
  };
})`;

/** The page's own type, and a wide one, where the machine has it. */
const ways = (["a4", "letter"] as const).flatMap((paper) => ["", "DejaVu Sans Condensed"].map((type) => ({ paper, type })));

describe.each(Object.keys(reports))("of %s", (name) => {
  test.each(ways)("no card is too full, none is set too small: %j", async ({ paper, type }) => {
    const page = await browser.open(cardsHtml(reports[name]!, { paper, ink: "light" }));
    if (type) await page.addStyleTag({ content: `body { font-family: "${type}", sans-serif !important; }` });
    const seen = (await page.evaluate(look)) as Seen[];
    expect(seen.length).toBeGreaterThanOrEqual(reports[name]!.cards.length);
    const { height } = cardSize(paper);
    expect(seen.filter((card) => Math.abs(card.height - height) > 0.2)).toEqual([]);
    expect(seen.flatMap(({ out }) => out)).toEqual([]);
    expect(Math.min(...seen.map(({ text }) => text))).toBeGreaterThanOrEqual(13.99);
    expect(Math.min(...seen.map(({ title }) => title))).toBeGreaterThanOrEqual(21.99);
    await page.close();
  });

  test.each(["light", "saving"] as const)("valid, and nothing for axe to find: %s", async (ink) => {
    const html = cardsHtml(reports[name]!, { paper: "a4", ink });
    expect(await markupFaults(html)).toEqual([]);
    const page = await browser.open(html, ink === "light" ? "screen" : "print");
    expect(await accessFaults(page)).toEqual([]);
    await page.close();
  });
});

describe("what is found", () => {
  let html = "";
  beforeAll(() => {
    html = cardsHtml(reports.samples!, { paper: "a4", ink: "light" });
  });

  test("a card that is too full, so that the check above can fail", async () => {
    const page = await browser.open(html.replace("</h2>", `</h2>${"<p>One line more.</p>".repeat(30)}`));
    const [first] = (await page.evaluate(look)) as Seen[];
    expect(first!.height).toBeGreaterThan(cardSize("a4").height + 10);
    await page.close();
  });

  test("a text that hardly stands out, and a heading that is not closed", async () => {
    const page = await browser.open(html.replace("<h2 ", '<h2 style="color: #ccc" '));
    expect(await accessFaults(page)).toEqual([expect.stringContaining("[color-contrast]")]);
    await page.close();
    expect(await markupFaults(html.replace("</h2>", ""))).toContainEqual(expect.stringContaining("[close-order]"));
  });
});

test("four stand on a sheet, two by two, and each sheet is one page", async () => {
  const page = await browser.open(cardsHtml(reports.samples!, { paper: "a4", ink: "light" }));
  const sheets = (await page.evaluate(`[...document.querySelectorAll(".sheet")].map((sheet) => ({
    height: sheet.getBoundingClientRect().height / 96 * 25.4,
    places: [...sheet.querySelectorAll(".card")].map((card) => { const r = card.getBoundingClientRect(); return [r.left, r.top - sheet.getBoundingClientRect().top].map(Math.round).join(" "); }),
  }))`)) as { height: number; places: string[] }[];
  for (const { height, places } of sheets.slice(0, -1)) {
    expect(height).toBeLessThanOrEqual(297);
    expect(new Set(places).size).toBe(4);
    expect(places).toEqual(sheets[0]!.places);
  }
  await page.close();
});

test("ink is saved: nothing is filled, and all of it is black", async () => {
  const page = await browser.open(cardsHtml(reports.samples!, { paper: "a4", ink: "saving" }));
  const colours = await page.evaluate(`[...new Set([...document.querySelectorAll(".sheet *:not(title)")].flatMap((one) => {
    const { backgroundColor, color, fill, tagName } = { ...one, tagName: one.tagName, backgroundColor: getComputedStyle(one).backgroundColor, color: getComputedStyle(one).color, fill: one.tagName === "path" ? getComputedStyle(one).fill : "none" };
    return ["behind " + backgroundColor, "text " + color, "filled " + fill];
  }))].sort()`);
  expect(colours).toEqual(["behind rgba(0, 0, 0, 0)", "filled none", "text rgb(0, 0, 0)"]);
  await page.close();
});

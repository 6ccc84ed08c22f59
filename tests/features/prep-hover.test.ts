import { describe, expect, test } from "vitest";
import { hoverAt } from "./cursor.ts";

function checkHover(text: string, ...labels: (string | RegExp)[]): void {
  const shown = hoverAt(text);
  for (const label of labels) {
    if (typeof label === "string" && label.startsWith("no ")) expect(shown).not.toContain(label.slice(3));
    else if (typeof label === "string") expect(shown).toContain(label);
    else expect(shown).toMatch(label);
  }
}

describe("a prep", () => {
  test("says its ratio, its °Brix and what boiled off: 100 + 100 to 150 is 2 : 1, by arithmetic", () =>
    checkHover(
      "prep rich sy<>rup\n  100 g white sugar\n  100 g water\n  method: simmer to 150 g\n",
      "| of | 200 g that goes in: 50.0 ± 1.0 g boils off |",
      /\| sugar \| 66\.5 °Bx, 88\.\d g\/100 ml \|/,
      "| sugar : water | 1.99 ± 0.04 : 1 by weight |",
    ));

  test("with more water than sugar the ratio is told the other way round", () =>
    checkHover("prep thin sy<>rup\n  100 g white sugar\n  200 g water\n", "| sugar : water | 1 : 2.01 by weight |"));

  test("that is no syrup has no ratio", () => checkHover("prep bri<>ne\n  20 g sea salt\n  80 g water\n", "no sugar : water"));

  test("that is foamed has its density told as a liquid", () =>
    checkHover("prep fo<>am\n  100 g egg white\n  100 g water\n  method: foam\n", "without the gas in it"));

  test("shows what was read, and on which day", () =>
    checkHover(
      "prep cor<>dial\n  100 g white sugar\n  100 g water\n  brix: 52\n  ph: 2.6\n  measured: 2026-03-01\n",
      "52 °Bx, as read 2026-03-01,",
      "| pH | 2.6, as read 2026-03-01 |",
    ));

  test("tells what stays behind with what is strained out, there and on the line", () => {
    const infusion = (line: string, head = "coffee rum") =>
      `prep ${head}\n  700 ml white rum\n  ${line}\n  method: infuse 12 hours; fine strain\n`;
    checkHover(infusion("100 g coffee, strained out", "coffee r<>um"), /of \| .* that goes in: 210 ± 15 g stays behind \|/);
    checkHover(infusion("100 g cof<>fee, strained out"), "· strained out", "with it 210 ± 15 g of the liquid", "1.8 to 2.4 g, practice");
  });
});

test("a bought syrup says its ratio too: 55.6 + 12.43 g of sugar in 100 g of agave syrup (USDA SR28 19912)", () => {
  checkHover(
    "stock agave sy<>rup\n  kind: syrup\n",
    /As a syrup: 68(\.\d)?( ± [\d.]+)? °Bx, [\d.]+ (± [\d.]+ )?: 1 of sugar to water by weight\./,
  );
  checkHover("stock lime ju<>ice\n  kind: juice\n", "no As a syrup");
});

test("a step of a prep says what goes off there", () => {
  const text = "prep cordial\n  300 g orange juice\n  100 g white sugar\n  method: re<>duce to 300 g\n";
  checkHover(text, "**reduce**", /Here 100 (± \d+ )?g boils off\./);
  checkHover(text.replace(" to 300 g", ""), "**reduce**", "State what it comes to", "no Here");
});

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { type AssessReport, assessSchema } from "../../server/reports/assess-schema.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

const project = fileURLToPath(new URL("../../", import.meta.url));

async function assessed(folder: string, ...argv: string[]): Promise<AssessReport> {
  const { code, out, err } = await mutchkin(folder, ["assess", "--format", "json", ...argv]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return assessSchema.parse(JSON.parse(out));
}

test("the JSON holds a drink's figures where the shape says", async () => {
  const folder = folderOf(soundHouse);
  const { drinks, preps } = await assessed(folder);
  expect(preps).toEqual([]);
  expect(drinks).toHaveLength(1);
  const [drink] = drinks;
  expect(drink).toMatchObject({ name: "Slack Rope", file: "bar.drink", line: 8, family: "sour", findings: [] });
  const { before, dilution, after, glass } = drink!;
  // Volumes shrink a little on mixing, by less than 2 % here: OIML R 22 for the spirit, practice for the rest.
  expect(before.volumeMl.value).toBeGreaterThan(0.98 * 107.5);
  expect(before.volumeMl.value).toBeLessThanOrEqual(107.5);
  // 60 ml of 40 % vol hold 24 ml of ethanol: arithmetic.
  expect((before.strengthPct.value! / 100) * before.volumeMl.value!).toBeCloseTo(24, 2);
  expect((after.strengthPct.value! / 100) * after.volumeMl.value!).toBeCloseTo(24, 2);
  expect(dilution.share.value).toBeCloseTo(dilution.waterMl.value! / before.volumeMl.value!, 4);
  expect(after.ratio.value).toBeCloseTo(after.sweetnessGPer100Ml.value! / after.acidGPer100Ml.value!, 4);
  expect(glass.capacityMl.value).toBe(240);
  expect(glass.fillShare.value).toBeCloseTo(after.volumeMl.value! / 240, 4);
  for (const figure of [before, dilution, after, glass].flatMap((group) => Object.values(group)))
    expect(figure.plusMinus).toBeGreaterThanOrEqual(0);
});

test("the JSON tells what one serve brings, what it contains, which diets it suits, and how long it keeps", async () => {
  const stock = "\nstock lime juice\n  kind: juice\n  keeps: 1 day chilled\n";
  const text = `${soundHouse}${stock}=== b.drink\ndrink White Rope\n  from: Slack Rope\n  serves: 2\n  1 egg white\n  10 ml nobody's tonic\n`;
  const [white, sound] = (await assessed(folderOf(text))).drinks;
  expect(sound!.serve.ethanolG.value).toBeCloseTo(24 * 0.78924, 2);
  expect(sound!.serve.standardDrinks.value).toBeCloseTo((24 * 0.78924) / sound!.serve.counted.grams, 3);
  // Every figure of a drink that holds no caffeine, and nothing of what nobody knows.
  expect(sound!.serve.caffeineMg.value).toBe(0);
  expect(white!.serve.energyKJ).toMatchObject({ value: null, because: [expect.stringContaining("nobody's tonic")] });
  expect(white!.allergens).toEqual({
    contains: [{ allergen: "egg", names: ["egg white"], assumed: true }],
    notStated: expect.arrayContaining(["nobody's tonic"]),
  });
  expect(white!.diets).toContainEqual({ diet: "vegan", suits: false, assumed: false, because: ["egg white"] });
  expect(white!.diets).toContainEqual({ diet: "kosher", suits: null, assumed: false, because: [] });
  expect(white!.keeps).toEqual({ text: "1 day chilled", name: "lime juice" });
});

test("the demo house carries allergens through its preps, its garnishes and its juice by the day", async () => {
  const { drinks } = await assessed(project, "samples/halyard-room", "--drink", "Deckhand's Breakfast");
  const { contains } = drinks[0]!.allergens;
  expect(contains.map(({ allergen, names }) => [allergen, ...names])).toEqual([
    ["gluten", "worcester sauce in deck mix"],
    ["fish", "worcester sauce in deck mix"],
    ["celery", "celery stick"],
  ]);
});

test("figures carry six digits, so that the same house prints the same on any machine", async () => {
  const { out } = await mutchkin(folderOf(soundHouse), ["assess", "--format", "json"]);
  const digits = [...out.matchAll(/: (-?[\d.]+)(?:e-?\d+)?,?\n/g)].map(
    ([, number]) => number!.replace(/^-?0?\.?0*/, "").replace(".", "").length,
  );
  expect(digits.length).toBeGreaterThan(20);
  expect(Math.max(...digits)).toBeLessThanOrEqual(6);
});

test("what nobody gave is null with the reason, and nothing else is", async () => {
  const text = `${soundHouse}=== b.drink\ndrink Blind Rope\n  glass: small coupe\n  method: build\n  garnish: none\n  50 ml plain spirit\n  10 ml tarred hemp water\n`;
  const drink = (await assessed(folderOf(text), "b.drink")).drinks[0]!;
  expect(drink.after.strengthPct).toMatchObject({ value: null, plusMinus: null });
  expect(drink.after.strengthPct.because?.join()).toContain("tarred hemp water");
  expect(drink.glass.capacityMl).toEqual({ value: 240, plusMinus: expect.any(Number) });
});

test("a drink in parts without a size has shares and no amounts", async () => {
  const text = `${soundHouse}=== b.drink\ndrink Rope by Thirds\n  family: sour\n  glass: small coupe\n  method: shake 12 s\n  garnish: none\n  4 parts plain spirit\n  2 parts lime juice\n  1 part rich sugar syrup\n`;
  const { before, dilution, after, glass } = (await assessed(folderOf(text), "b.drink")).drinks[0]!;
  const because = ["it is written in parts without a size, so only its shares are known"];
  for (const figure of [before.volumeMl, before.massG, dilution.waterMl, after.volumeMl, glass.fillShare]) {
    expect(figure).toEqual({ value: null, plusMinus: null, because });
  }
  expect(before.strengthPct.value).not.toBeNull();
  expect(after.strengthPct.value).not.toBeNull();
  expect(glass.capacityMl.value).toBe(240);
});

test("a prep in parts has a sugar content and no weight; one by weight has both", async () => {
  const text = `${soundHouse}=== preps.drink\nprep even syrup\n  1 part white sugar\n  1 part water\n  parts by: weight\n\nprep weighed syrup\n  100 g white sugar\n  100 g water\n`;
  const { preps } = await assessed(folderOf(text), "preps.drink");
  expect(preps.map(({ name, massG }) => [name, massG.value])).toEqual([
    ["even syrup", null],
    ["weighed syrup", 200],
  ]);
  // Equal weights of sucrose and water are 50 g in 100 g; 1.2296 g/ml at 20 °C (NBS Circular 440, from memory).
  // Sugar from the bag holds a trace of water, so a little less.
  for (const { brix, densityGPerMl } of preps) {
    expect(brix.value).toBeCloseTo(50, 0);
    expect(densityGPerMl.value).toBeCloseTo(1.2296, 2);
  }
});

test("findings stand beside their drink with the file's line, and do not change the exit code", async () => {
  const text = `${soundHouse}=== b.drink\n\ndrink Rough Rope\n  from: Slack Rope\n  17,5 ml rich sugar syrup\n`;
  const [drink] = (await assessed(folderOf(text), "b.drink")).drinks;
  expect(drink!.findings).toEqual([
    {
      code: "decimal-comma",
      severity: "warning",
      line: 4,
      message: "17,5 is written with a decimal comma; it is read as 17.5. Write 17.5.",
    },
  ]);
});

test("a name picks one drink and the preps that go into it, wherever they stand", async () => {
  const text = `${soundHouse}=== preps.drink\nprep thin syrup\n  1 part deep syrup\n  1 part water\n\nprep deep syrup\n  2 parts white sugar\n  1 part water\n  parts by: weight\n\nprep other syrup\n  1 part deep syrup\n=== cards/b.drink\ndrink Caf\u00e9 Rope\n  from: Slack Rope\n  swap rich sugar syrup for 20 ml thin syrup\n\ndrink Caf\u00e9 Rope, Long\n  from: Caf\u00e9 Rope\n`;
  const report = await assessed(folderOf(text), "cards", "--drink", "cafe  rope, long");
  expect(report.drinks.map(({ name }) => name)).toEqual(["Café Rope, Long"]);
  expect(report.preps.map(({ name }) => name)).toEqual(["thin syrup", "deep syrup"]);
});

test.each([
  ["Slack Roop", "Did you mean “Slack Rope”?"],
  ["Quite Another", "`mutchkin assess` without `--drink` lists all of them."],
])("a drink that is not there ends with 2 (%s)", async (name, todo) => {
  const ended = await mutchkin(folderOf(soundHouse), ["assess", "--drink", name]);
  expect(ended).toEqual({ code: 2, out: "", err: `There is no drink “${name}” here.\n${todo}\n` });
});

test("the sheet names the house, its drinks and what their figures are worth", async () => {
  const { code, out } = await mutchkin(folderOf(soundHouse), ["assess"]);
  const lines = out.split("\n");
  expect(code).toBe(0);
  expect(lines[0]).toBe("Test Room: 1 drink");
  expect(out).toMatch(/^Slack Rope +\d+\.\d +\d+ +\d+ +\d+\.\d +\d\.\d\d +\d+\.\d +−\d\.\d +\d+$/m);
  expect(out).toMatch(/^± is one standard uncertainty/m);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
});

test("volumes are in the unit that the house writes", async () => {
  const ml = await mutchkin(folderOf(soundHouse), ["assess"]);
  const oz = await mutchkin(folderOf(soundHouse.replace("house Test Room", "house Test Room\n  units: oz\n  ounce: 30 ml")), ["assess"]);
  const volume = (out: string) => Number(/^Slack Rope +\S+ +(\S+)/m.exec(out)![1]);
  expect(ml.out).toMatch(/^family +% vol +ml /m);
  expect(oz.out).toMatch(/^family +% vol +oz /m);
  expect(Math.abs(volume(oz.out) * 30 - volume(ml.out))).toBeLessThan(3);
});

test("one drink is set out at length", async () => {
  const { out } = await mutchkin(folderOf(soundHouse), ["assess", "--drink", "slack rope"]);
  expect(out).toMatch(/^Slack Rope {2}sour, bar\.drink:8$/m);
  expect(out).toMatch(/^Water added {5}\d+ ± \d+ ml, \d+ ± \d+ % of the volume before, −\d\.\d ± \d\.\d °C then$/m);
});

test("the usual caution stands below the drinks that it holds for", async () => {
  const text = `${soundHouse}=== b.drink\ndrink White Rope\n  from: Slack Rope\n  1 egg white\n`;
  const { out } = await mutchkin(folderOf(text), ["assess"]);
  expect(out).toMatch(/^! Raw egg: tell the guest.*\(White Rope\)$/m);
});

test("every drink of the samples has a strength, but where a sample shows what is unknown", async () => {
  const { drinks } = await assessed(project, "samples");
  const unknown = drinks.filter(({ after }) => after.strengthPct.value === null).map(({ file }) => file.split("/").slice(1).join("/"));
  expect(drinks.length).toBeGreaterThanOrEqual(40);
  expect(drinks.filter(({ file }) => file.startsWith("samples/halyard-room/")).length).toBeGreaterThanOrEqual(16);
  expect(unknown.filter((file) => !file.startsWith("mistakes/"))).toEqual([]);
  // Files made to show an amount, a name or a unit that cannot be read.
  const meant = [
    "bare-count",
    "incomplete-step",
    "missing-amount",
    "thousands-comma",
    "unknown-figures",
    "unknown-ingredient",
    "unknown-unit",
  ];
  expect(unknown.filter((file) => !meant.some((code) => file === `mistakes/${code}.drink`))).toEqual([]);
});

test("the demo house is in order: all that is said of it are cautions", async () => {
  const { code, out } = await mutchkin(project, ["check", "samples/halyard-room"]);
  const found = [...out.matchAll(/\[([a-z-]+)\]$/gm)].map(([, one]) => one);
  expect({ code, found }).toEqual({ code: 0, found: ["strong-acid", "raw-egg", "caffeine-with-alcohol"] });
  expect(out).toMatch(/\n\d+ files checked: 3 for information\.\n$/);
});

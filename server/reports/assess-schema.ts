/** The shape of `mutchkin assess --format json`, and of the data behind its table. */
import { z } from "zod";
import { allergenWords, dietWords } from "../../grammar/fields.ts";
import { figureNames } from "../engine/plan.ts";

export const severitySchema = z.enum(["error", "warning", "information", "hint"]);

export const anyFigure = z
  .strictObject({
    value: z.number().nullable().describe("Null where it is unknown or means nothing here; `because` says why."),
    plusMinus: z.number().nullable().describe("One standard uncertainty, in the unit of the value."),
    because: z.array(z.string()).optional().describe("Why there is no value."),
  })
  .meta({ id: "figure" });
const figure = (what: string) => anyFigure.describe(what);

const line = z.int().min(1).describe("The line in the file, the first one being 1.");
const file = z.string().describe("From the current folder, with forward slashes.");

const finding = z.strictObject({
  code: z.string().describe("The rule's code, for `severity:` in a house and for `# allow CODE: reason`."),
  severity: severitySchema,
  line,
  message: z.string().describe("What is wrong and what to do about it."),
});

const amount = (what: string) => z.number().nullable().describe(`${what}; null where it is unknown.`);

const explanation = z.strictObject({
  brought: z
    .array(
      z.strictObject({
        name: z.string(),
        g: z.number(),
        ml: amount("At 20 °C"),
        waterG: amount("Water"),
        ethanolG: amount("Ethanol"),
        sugarG: amount("All sugars by their own weight"),
        sweetnessG: amount("The weight of sucrose that is as sweet"),
        acidG: amount("Titratable acidity as citric acid"),
        saltG: amount("Salt"),
        caffeineMg: amount("Caffeine, mg"),
      }),
    )
    .describe("What each pour brings, and the water that ice and method add; grams."),
  sums: z.array(
    z.strictObject({
      figure: z.enum(figureNames),
      label: z.string(),
      unit: z.string(),
      result: anyFigure,
      working: z.string().optional().describe("The sum in words, with its numbers; absent where the figure is unknown."),
      source: z.string().optional().describe("Absent where it is arithmetic."),
      doubts: z
        .array(z.strictObject({ what: z.string(), share: z.number().describe("Of the variance, 0 to 1.") }))
        .describe("What most of the uncertainty comes from."),
    }),
  ),
  assumptions: z.array(z.string()),
});

const allergens = z
  .strictObject({
    contains: z
      .array(
        z.strictObject({
          allergen: z.enum(allergenWords),
          names: z.array(z.string()).describe("What brings it."),
          assumed: z.boolean().describe("Only the built-in larder or a word in a name says so."),
        }),
      )
      .describe("In the order of Regulation (EU) 1169/2011, Annex II."),
    notStated: z.array(z.string()).describe("Of which nobody states the allergens: that is not free from them."),
  })
  .describe("Of all that goes in, alternatives, options, rim and garnish included.");

const diets = z.array(
  z.strictObject({
    diet: z.enum(dietWords),
    suits: z.boolean().nullable().describe("Null where it is not stated."),
    assumed: z.boolean().describe("It suits, and of something that goes in only the built-in larder says so."),
    because: z.array(z.string()).describe("Where it does not suit, what decides that."),
  }),
);

const keeps = z
  .strictObject({ text: z.string(), name: z.string().describe("What it is stated for.") })
  .nullable()
  .describe("The shortest that is stated; null where none is. It is never worked out.");

const serve = z
  .strictObject({
    ethanolG: figure("Alcohol, g."),
    standardDrinks: figure("How many of what the house's country counts in."),
    counted: z
      .strictObject({
        country: z.string().describe("Two letters; empty for the World Health Organization's."),
        grams: z.number().describe("Of alcohol in one."),
        word: z.string(),
        source: z.string(),
      })
      .describe("What the house's country counts in."),
    energyKJ: figure("By the factors of Regulation (EU) 1169/2011, Annex XIV, kJ."),
    energyKcal: figure("By the same, kcal."),
    caffeineMg: figure("Milligrams."),
  })
  .describe("What one serve brings.");

const drink = z.strictObject({
  name: z.string(),
  file,
  line,
  family: z.string().nullable().describe("Null where the drink names none."),
  allergens,
  diets,
  keeps,
  serve,
  before: z
    .strictObject({
      volumeMl: figure("At 20 °C, ml."),
      massG: figure("Grams."),
      strengthPct: figure("% vol at 20 °C."),
    })
    .describe("What is in the vessel with the ice, before any of it melts; for all serves together."),
  dilution: z
    .strictObject({
      waterMl: figure("Water that the ice gave and the method added, ml; for all serves together."),
      share: figure("Water added ÷ volume before, 0.25 for a quarter."),
      temperatureC: figure("°C as it leaves the vessel, before glass and what is poured after."),
    })
    .describe("What chilling adds."),
  after: z
    .strictObject({
      volumeMl: figure("Liquid as served, without ice, ml; for all serves together."),
      strengthPct: figure("% vol at 20 °C."),
      sugarGPer100Ml: figure("All sugars by their own weight, g in 100 ml."),
      sweetnessGPer100Ml: figure("Sugars as the weight of sucrose that is as sweet, g in 100 ml."),
      acidGPer100Ml: figure("Titratable acidity as citric acid, g in 100 ml."),
      ratio: figure("Sweetness ÷ acid."),
      saltGPer100Ml: figure("Grams in 100 ml."),
      temperatureC: figure("°C in the glass, topped up; a glass that is named has warmed or cooled it, except where ice stands in it."),
    })
    .describe("The drink as served."),
  glass: z.strictObject({
    capacityMl: figure("Up to the brim, ml."),
    fillShare: figure("Liquid and ice of one serve ÷ capacity, 1 for full to the brim."),
  }),
  service: z
    .strictObject({
      batchMl: figure("Of the mixed batch in one serve, at 20 °C, ml."),
      jiggerMl: z.number().nullable().describe("The same as the jigger measures it; null where it measures nothing that near."),
      batched: z.array(z.string()).describe("What the batch is made of."),
      beside: z.array(z.string()).describe("What is poured beside it for one serve, in words."),
    })
    .nullable()
    .describe("How it is poured from its pre-mixed bottle; null where nothing is `batched`."),
  standing: z
    .array(
      z.strictObject({
        minutes: z.number(),
        lowMl: z.number().describe("At least."),
        highMl: z.number().describe("At most."),
      }),
    )
    .describe(
      "Water that one serve takes up from the ice in its glass in so many minutes, ml. Practice, no source: a band, never one number. Empty without ice there.",
    ),
  cost: z
    .strictObject({
      currency: z.string().nullable().describe("Three letters; null where the house names none."),
      perServe: figure("What one serve's ingredients cost, waste, garnish and rim counted; without tax."),
      pricedPerServe: z.number().describe("What of it has a price: known even where the whole is not."),
      without: z.array(z.string()).describe("Garnish, rim and leaves of no known price, which are left out."),
      target: z.number().nullable().describe("The share that the house means it to take."),
      sales: z.array(
        z.strictObject({
          menu: z.string().nullable().describe("Null for the drink's own price."),
          price: z.number().describe("As the guest reads it, for all serves together."),
          net: z.number().nullable().describe("Without tax; null where the house does not state the tax that it holds."),
          share: figure("Cost ÷ net price, 0.22 for 22 %."),
        }),
      ),
    })
    .nullable()
    .describe("Null where nothing that goes in has a price, and for parts without a size."),
  findings: z.array(finding),
  explanation: explanation.optional().describe("How the figures come about; only with `--explain`."),
});

const prep = z.strictObject({
  name: z.string(),
  massG: figure("The whole batch as written, g."),
  volumeMl: figure("The whole batch as written, ml at 20 °C."),
  densityGPerMl: figure("At 20 °C, g/ml."),
  brix: figure("Sugars, g in 100 g: measured where it was, else computed."),
  sugarToWater: figure("Sugar to one of water by weight, 2 for a 2 : 1 syrup; null below 20 °Bx."),
  strengthPct: figure("% vol at 20 °C."),
  acidGPer100G: figure("Titratable acidity as citric acid, g in 100 g."),
  boiledOffG: figure("Water that the steps boil off, g."),
  leftBehindG: figure("What stays behind, g: held back by what is strained out, with the curd or the fat, or what a stated yield leaves."),
  allergens,
  diets,
  keeps,
  measured: z
    .strictObject({
      on: z.string().nullable().describe("The day of the readings; null where none is given."),
      brix: z.number().nullable(),
      densityGPerMl: z.number().nullable(),
      strengthPct: z.number().nullable(),
      ph: z.number().nullable(),
    })
    .describe("As read with an instrument and written in the prep; null where nothing was."),
});

export const assessSchema = z
  .strictObject({ drinks: z.array(drink), preps: z.array(prep) })
  .describe(
    "Drinks and preps as Mutchkin computes them. Figures carry up to six digits; `plusMinus` says how many of them are worth something.",
  );

export type AssessReport = z.infer<typeof assessSchema>;
export type DrinkReport = AssessReport["drinks"][number];
export type ExplanationReport = NonNullable<DrinkReport["explanation"]>;
export type PrepReport = AssessReport["preps"][number];
export type FigureReport = PrepReport["massG"];

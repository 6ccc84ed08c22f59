/** Words that are offered and stand in no other table, each in one line. One row each. */

/** The words that start a line, and those that follow them. */
export const lineWords: Readonly<Record<string, string>> = {
  or: "Something else in place of the pour above.",
  swap: "In a riff: `swap this for that`.",
  without: "In a riff: leaves a pour of the parent out.",
  all: "Every pour of that name.",
  top: "Fills the glass up, last.",
  rinse: "Coats the glass.",
  to: "Makes the prep up to a total: `to 100 g water`.",
  section: "A heading on the card.",
  "-": "A drink on the card, with its price.",
  allow: "Lets one finding stand on this line, or on the next: `# allow CODE: reason`.",
};

/** What a closed word means, by its field (`stock status`) and itself; or by its field's name alone. */
const meanings: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "stock status": { in: "There is some.", out: "There is none: its drinks cannot be poured tonight." },
  "prep status": { in: "There is some.", out: "There is none: its drinks cannot be poured tonight." },
  "drink status": { draft: "Not finished.", live: "Poured.", retired: "Not poured any more." },
  "house units": { ml: "Millilitres.", cl: "Centilitres: 10 ml.", oz: "Fluid ounces, as large as `ounce:` says." },
  "house ounce": { us: "29.57 ml.", imperial: "28.41 ml.", "30 ml": "A pouring ounce: ratios stay exact." },
  "house prices": { "with tax": "A price on a menu already holds the tax.", "without tax": "The tax comes on top of a price on a menu." },
  "house cautions": { shown: "Cards print the cautions in full.", short: "Cards print the cautions in a few words." },
  "house severity": {
    off: "Not looked for.",
    hint: "Hardly seen.",
    information: "Seen, and no fault.",
    warning: "Worth a look.",
    error: "Wrong.",
  },
  "prep parts by": { weight: "Parts are weighed.", volume: "Parts are measured." },
  "drink parts by": { weight: "Parts are weighed.", volume: "Parts are measured." },
  allergens: {
    gluten: "Cereals with gluten: wheat, rye, barley, oats, spelt.",
    crustaceans: "Prawns, crabs, lobsters.",
    egg: "Eggs of any bird.",
    fish: "Fish; isinglass, too.",
    peanut: "Peanuts.",
    soya: "Soya.",
    milk: "Milk and lactose, of any animal.",
    nuts: "Tree nuts: almonds, hazelnuts, walnuts, cashews, pecans, Brazil nuts, pistachios, macadamias.",
    celery: "Celery and celeriac.",
    mustard: "Mustard.",
    sesame: "Sesame.",
    sulphites: "Sulphur dioxide and sulphites from 10 mg/kg or 10 mg/l on.",
    lupin: "Lupin.",
    molluscs: "Mussels, oysters, squid.",
    none: "None of the fourteen. Silence is no answer.",
  },
  diet: {
    vegan: "Nothing of an animal.",
    vegetarian: "Nothing of a killed animal.",
    halal: "Known to be halal.",
    kosher: "Known to be kosher.",
    "gluten free": "At most 20 mg of gluten in a kilogram (Regulation (EU) 828/2014).",
  },
  yes: { fizz: "It bubbles: poured after the shaking." },
  written: {
    today: "Today.",
    now: "What holds while nothing is stated here.",
    family: "The window of its family, to start from.",
    poured: "Poured in this house, and declared nowhere.",
  },
};

export function wordsIn(of: string, word: string): string | undefined {
  return (meanings[of] ?? meanings[of.slice(of.indexOf(" ") + 1)])?.[word];
}

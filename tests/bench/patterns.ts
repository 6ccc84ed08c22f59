/**
 * The patterns that generated drinks follow: common proportions, no source, chosen so that an
 * ordinary drink lies inside its family's windows.
 */

/** What may stand in for what when a drink is riffed on. */
export const base = {
  spirit: ["aged rum", "white rum", "dry gin", "rye whiskey", "grain whisky", "agave spirit", "grape brandy"],
  fortified: ["oloroso sherry", "sweet vermouth", "white port"],
  aperitif: ["bitter aperitif", "gentian aperitif"],
};

interface Pattern {
  readonly family: string;
  readonly glass: string;
  readonly methods: readonly string[];
  readonly garnishes: readonly string[];
  readonly pours: readonly { amount: number; unit: string; of: readonly string[]; notes?: readonly string[] }[];
}

const ml = (amount: number, ...of: string[]) => ({ amount, unit: "ml", of });
const bitters = { amount: 2, unit: "dashes", of: ["clove bitters", "orange bitters"] };
const citrusPeel = ["lemon zest, expressed", "orange zest, expressed", "none"];
const shaken = ["shake 12 s; fine strain", "shake 10 s; fine strain", "shake 12 s with cubed ice; fine strain"];
const stirred = ["stir 30 s; strain", "stir 25 s; strain"];

export const patterns: readonly Pattern[] = [
  {
    family: "sour",
    glass: "coupe, chilled",
    methods: shaken,
    garnishes: ["lime wheel", "none"],
    pours: [ml(60, ...base.spirit), ml(22.5, "lime juice"), ml(22.5, "plain syrup", "tea syrup", "fennel syrup")],
  },
  {
    family: "egg sour",
    glass: "coupe, chilled",
    methods: ["dry shake 10 s; shake 12 s; fine strain"],
    garnishes: ["grated nutmeg", "lemon zest, expressed"],
    pours: [
      ml(60, ...base.spirit),
      ml(22.5, "lemon juice"),
      ml(22.5, "plain syrup", "tea syrup"),
      { amount: 1, unit: "", of: ["egg white"] },
    ],
  },
  {
    family: "low sour",
    glass: "coupe, chilled",
    methods: shaken,
    garnishes: ["orange zest, expressed"],
    pours: [ml(60, "oloroso sherry"), ml(20, "lemon juice"), ml(20, "plain syrup", "fennel syrup")],
  },
  {
    family: "fizz",
    glass: "highball",
    methods: ["shake 10 s; fine strain over cubed ice"],
    garnishes: ["lemon wheel", "mint sprig"],
    pours: [
      ml(50, ...base.spirit),
      ml(25, "lemon juice"),
      ml(22.5, "plain syrup", "tea syrup"),
      { ...ml(70, "soda water"), notes: ["after"] },
    ],
  },
  {
    family: "sweet highball",
    glass: "highball",
    methods: ["build over cubed ice"],
    garnishes: ["lime wheel", "grapefruit zest"],
    pours: [ml(50, ...base.spirit), ml(150, "tonic water")],
  },
  {
    family: "dry highball",
    glass: "highball",
    methods: ["build over cubed ice"],
    garnishes: citrusPeel,
    pours: [ml(45, ...base.spirit), ml(135, "soda water")],
  },
  {
    family: "dry stirred",
    glass: "coupe, chilled",
    methods: stirred,
    garnishes: citrusPeel,
    pours: [ml(60, ...base.spirit), ml(22.5, "dry vermouth"), bitters],
  },
  {
    family: "aromatic stirred",
    glass: "coupe, chilled",
    methods: stirred,
    garnishes: ["preserved cherry", "orange zest, expressed"],
    pours: [ml(60, ...base.spirit), ml(30, "sweet vermouth"), bitters],
  },
  {
    family: "equal bitter",
    glass: "rocks",
    methods: ["stir 20 s; strain over large cube"],
    garnishes: ["orange zest, expressed"],
    pours: [ml(30, ...base.spirit), ml(30, "sweet vermouth"), ml(30, ...base.aperitif)],
  },
  {
    family: "built",
    glass: "rocks",
    methods: ["stir 20 s; strain over large cube"],
    garnishes: citrusPeel,
    pours: [ml(60, ...base.spirit), ml(5, "rich syrup", "smoked maple syrup"), bitters],
  },
  {
    family: "spritz",
    glass: "wine glass",
    methods: ["build over cubed ice"],
    garnishes: ["orange wheel", "bay leaf"],
    pours: [ml(60, ...base.aperitif), ml(90, "sparkling wine"), ml(30, "soda water")],
  },
  {
    family: "coffee",
    glass: "coupe, chilled",
    methods: ["shake 12 s; fine strain"],
    garnishes: ["coffee beans", "none"],
    pours: [ml(50, ...base.spirit), { ...ml(30, "espresso"), notes: ["hot"] }, ml(20, "coffee liqueur"), ml(5, "plain syrup")],
  },
];

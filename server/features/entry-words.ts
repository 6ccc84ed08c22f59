/** The words that open an entry, each in one line. Hover and completion read this table. */
import type { EntryKind } from "../../grammar/fields.ts";

export const entryWords: Readonly<Record<EntryKind, string>> = {
  house:
    "The house's own rules: its units and measures, how cold its freezer is, how loud each rule is. They hold for its folder and all below.",
  stock: "Something bought, as its label gives it. What it leaves out is taken from the larder and marked as assumed.",
  prep: "Something made here from other things: a syrup, a cordial, an infusion.",
  drink: "A spec: so much of this, so much of that, how it is chilled, what it is served in.",
  menu: "What is on the card, in its order, with prices.",
  family: "A pattern of drinks, with the windows that its drinks are held against.",
  glass: "A glass, and how much it holds.",
  ice: "An ice: how cold it is, what a piece weighs.",
  book: "A drinks book in Markdown: its chapters, and how its recipes and numbers are printed.",
};

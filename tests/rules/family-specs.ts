/**
 * Drinks of every family that ought to stand inside its windows, and drinks that ought not: common
 * proportions, common practice, from memory, no source.
 */
import { specimen } from "../../server/rules/specimen.ts";

export const shake = { glass: "double rocks", method: "shake 12 s; fine strain" };
const stir = { glass: "double rocks", method: "stir 30 s; strain" };
export const long = { glass: "tropical glass", method: "shake 10 s; strain over 100 g cubed ice" };
export const build = { glass: "tropical glass", method: "build over 130 g cubed ice" };
const rocks = { glass: "double rocks", method: "build over 130 g cubed ice" };
const crushed = { glass: "double rocks", method: "shake 6 s; strain over 150 g crushed ice" };
const hot = { glass: "copper mug", method: "warm" };
const blend = (ice: number) => ({ glass: "tropical glass", method: `blend with ${ice} g crushed ice` });

export type Spec = readonly [family: string, fields: Record<string, string>, ...pours: string[]];

export const passing: readonly Spec[] = [
  ["sour", shake, "60 ml rum", "22.5 ml lime juice", "22.5 ml plain syrup"],
  ["sour", shake, "45 ml tequila", "22.5 ml orange liqueur", "22.5 ml lime juice"],
  ["sour", shake, "22.5 ml gin", "22.5 ml cherry liqueur", "22.5 ml herbal liqueur", "22.5 ml lime juice"],
  ["egg sour", shake, "60 ml whiskey", "22.5 ml lemon juice", "22.5 ml plain syrup", "30 ml egg white"],
  ["egg sour", shake, "60 ml brandy", "25 ml lime juice", "25 ml plain syrup", "25 ml egg white"],
  ["egg sour", shake, "50 ml gin", "22.5 ml lemon juice", "15 ml berry syrup", "20 ml egg white"],
  ["low sour", shake, "60 ml sherry", "20 ml lemon juice", "20 ml plain syrup"],
  ["low sour", shake, "60 ml sherry", "15 ml lemon juice", "15 ml plain syrup"],
  ["low sour", shake, "60 ml sweet vermouth", "20 ml lemon juice"],
  ["fizz", long, "50 ml gin", "25 ml lemon juice", "20 ml plain syrup", "90 ml soda water, after"],
  ["fizz", build, "50 ml gin", "25 ml lemon juice", "20 ml plain syrup", "90 ml soda water"],
  ["fizz", build, "50 ml rum", "22.5 ml lime juice", "20 ml plain syrup", "6 mint leaves", "60 ml soda water"],
  [
    "fizz",
    { ...long, method: "shake 12 s; fine strain" },
    "50 ml gin",
    "25 ml lemon juice",
    "22.5 ml plain syrup",
    "60 ml soda water, after",
  ],
  ["sweet highball", build, "50 ml gin", "150 ml tonic water"],
  ["sweet highball", build, "50 ml rum", "15 ml lime juice", "120 ml ginger beer"],
  ["sweet highball", build, "45 ml vodka", "120 ml orange juice"],
  ["sweet highball", build, "50 ml rum", "120 ml cola"],
  ["sweet highball", build, "45 ml whisky", "120 ml ginger ale"],
  ["dry highball", build, "45 ml whisky", "135 ml soda water"],
  ["dry highball", build, "45 ml tequila", "135 ml soda water", "5 ml lime juice"],
  ["dry highball", build, "40 ml brandy", "5 ml aromatic bitters", "150 ml soda water"],
  ["dry stirred", stir, "60 ml gin", "12.5 ml dry vermouth"],
  ["dry stirred", stir, "60 ml gin", "30 ml dry vermouth"],
  ["dry stirred", stir, "70 ml vodka", "10 ml dry vermouth"],
  ["aromatic stirred", stir, "60 ml rye", "30 ml sweet vermouth"],
  ["aromatic stirred", stir, "45 ml whiskey", "25 ml sweet vermouth", "25 ml bitter liqueur"],
  ["aromatic stirred", stir, "50 ml rum", "25 ml sweet vermouth", "5 ml orange liqueur"],
  ["equal bitter", stir, "30 ml gin", "30 ml sweet vermouth", "30 ml bitter liqueur"],
  ["equal bitter", stir, "40 ml gin", "25 ml sweet vermouth", "25 ml bitter liqueur"],
  ["equal bitter", stir, "30 ml agave spirit", "30 ml sweet vermouth", "30 ml bitter liqueur"],
  ["built", rocks, "60 ml whiskey", "5 ml rich syrup", "2 dashes aromatic bitters"],
  ["built", rocks, "60 ml whiskey", "7.5 ml plain syrup", "2 dashes aromatic bitters"],
  ["built", { glass: "julep cup", method: "churn over 200 g crushed ice" }, "60 ml whiskey", "12.5 ml plain syrup", "8 mint leaves"],
  [
    "spritz",
    { glass: "wine glass", method: "shake 8 s; fine strain" },
    "25 ml gin",
    "15 ml lemon juice",
    "10 ml plain syrup",
    "75 ml brut, after",
  ],
  [
    "spritz",
    { glass: "tropical glass", method: "build over 130 g cubed ice" },
    "60 ml light aperitif",
    "90 ml dry fizz",
    "30 ml soda water",
  ],
  ["spritz", { glass: "flute", method: "none" }, "50 ml peach puree", "100 ml dry fizz, after"],
  ["frozen", blend(180), "60 ml rum", "25 ml lime juice", "35 ml plain syrup"],
  ["frozen", blend(150), "45 ml tequila", "15 ml orange liqueur", "25 ml lime juice", "20 ml plain syrup"],
  ["frozen", blend(130), "50 ml rum", "60 ml pineapple juice", "40 ml coconut cream", "10 ml lime juice"],
  ["cream", shake, "30 ml brandy", "30 ml cacao liqueur", "30 ml cream"],
  ["cream", shake, "25 ml mint liqueur", "25 ml cacao liqueur", "30 ml cream"],
  ["cream", rocks, "50 ml vodka", "25 ml coffee liqueur", "25 ml cream"],
  ["cream", { ...rocks, method: "build" }, "50 ml vodka", "25 ml coffee liqueur", "25 ml cream, floated"],
  ["flip", shake, "60 ml rum", "15 ml plain syrup", "1 egg"],
  ["flip", shake, "60 ml port", "10 ml plain syrup", "1 egg"],
  ["flip", shake, "45 ml rum", "20 ml plain syrup", "15 ml cream", "1 egg"],
  ["hot", hot, "50 ml whisky", "15 ml honey", "10 ml lemon juice", "120 ml water, hot"],
  ["hot", hot, "40 ml whiskey", "10 g sugar", "120 ml coffee, hot", "30 ml cream, floated"],
  ["hot", { ...hot, method: "build; stir" }, "50 ml whisky", "15 ml honey", "10 ml lemon juice", "120 ml boiling water"],
  ["hot", hot, "150 ml spiced wine, hot", "15 g sugar", "10 ml brandy"],
  ["coffee", shake, "50 ml vodka", "30 ml espresso, hot", "20 ml coffee liqueur", "5 ml plain syrup"],
  ["coffee", shake, "40 ml vodka", "30 ml espresso, hot", "15 ml coffee liqueur", "10 ml plain syrup"],
  ["coffee", shake, "45 ml rum", "30 ml espresso, hot", "15 ml rich syrup"],
  ["tropical", crushed, "60 ml rum", "25 ml lime juice", "15 ml orange liqueur", "12.5 ml almond syrup"],
  [
    "tropical",
    { ...crushed, method: "whip shake; dump over 150 g crushed ice" },
    "60 ml rum",
    "25 ml lime juice",
    "15 ml orange liqueur",
    "12.5 ml almond syrup",
  ],
  ["tropical", crushed, "45 ml rum", "45 ml pineapple juice", "15 ml lime juice", "20 ml bitter liqueur", "7.5 ml rich syrup"],
  ["tropical", crushed, "60 ml rum", "20 ml grapefruit juice", "20 ml lime juice", "15 ml honey"],
  ["punch", { glass: "punch bowl", method: "stir 30 s; strain" }, "40 ml rum", "17.5 ml lemon juice", "17.5 ml plain syrup", "80 ml tea"],
  [
    "punch",
    { glass: "punch bowl", method: "stir 30 s; strain" },
    "20 ml brandy",
    "20 ml rum",
    "17.5 ml lemon juice",
    "17.5 ml plain syrup",
    "80 ml tea",
  ],
  [
    "punch",
    { glass: "punch bowl", method: "none" },
    "60 ml red wine",
    "20 ml rum",
    "15 ml lemon juice",
    "15 ml plain syrup",
    "40 ml water",
  ],
  ["savoury", build, "50 ml vodka", "120 ml tomato juice", "10 ml lemon juice"],
  ["savoury", build, "50 ml tequila", "120 ml tomato juice", "10 ml lemon juice"],
  ["savoury", build, "75 ml sherry", "90 ml tomato juice"],
  ["zero-proof", build, "25 ml lemon juice", "25 ml plain syrup", "120 ml soda water"],
  ["zero-proof", build, "150 ml tonic water"],
  ["zero-proof", build, "60 ml verjus", "10 ml plain syrup", "90 ml soda water"],
];

export const found: readonly Spec[] = [
  ["sour", shake, "60 ml rum", "22.5 ml lime juice", "67.5 ml plain syrup"],
  ["sour", shake, "60 ml rum", "22.5 ml lime juice", "5 ml plain syrup"],
  ["egg sour", shake, "50 ml whiskey", "25 ml lemon juice", "37.5 ml plain syrup", "30 ml egg white"],
  ["low sour", shake, "60 ml sweet vermouth", "20 ml lemon juice", "15 ml plain syrup"],
  ["fizz", long, "50 ml gin", "25 ml lemon juice", "40 ml plain syrup", "90 ml soda water, after"],
  ["sweet highball", build, "50 ml gin", "60 ml tonic water"],
  ["dry highball", build, "45 ml whisky", "15 ml plain syrup", "135 ml soda water"],
  ["dry stirred", stir, "60 ml gin", "12.5 ml dry vermouth", "10 ml rich syrup"],
  ["aromatic stirred", stir, "30 ml rye", "60 ml sweet vermouth", "15 ml plain syrup"],
  ["equal bitter", stir, "30 ml gin", "30 ml sweet vermouth", "30 ml bitter liqueur", "10 ml plain syrup"],
  ["built", rocks, "50 ml whiskey", "20 ml rich syrup"],
  ["spritz", { glass: "wine glass", method: "none" }, "30 ml blackcurrant liqueur", "90 ml brut, after"],
  ["frozen", blend(180), "60 ml rum", "25 ml lime juice", "15 ml plain syrup"],
  ["flip", shake, "60 ml rum", "1 egg"],
  ["hot", hot, "50 ml whisky", "10 ml honey", "25 ml lemon juice", "120 ml water, hot"],
  ["coffee", shake, "50 ml vodka", "30 ml espresso, hot"],
  ["tropical", crushed, "60 ml rum", "15 ml orange liqueur", "30 ml almond syrup"],
  ["punch", { glass: "punch bowl", method: "stir 30 s; strain" }, "40 ml rum", "17.5 ml lemon juice", "17.5 ml plain syrup"],
  ["savoury", build, "50 ml vodka", "120 ml tomato juice", "10 ml lemon juice", "2 g salt"],
  ["zero-proof", shake, "60 ml tea", "25 ml lime juice", "25 ml plain syrup"],
];

/** The spec as a text; its drink is called Slip Water. */
export const textOf = ([family, fields, ...pours]: Spec): string => specimen(pours, { ...fields, family });

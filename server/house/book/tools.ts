/** What a step of a method is done with, as a book lists it: practice, no source. Each row's first is what it is usually called. */

const byTechnique: Readonly<Record<string, readonly [string, ...string[]]>> = {
  shake: ["shaker", "tin", "tins"],
  "dry shake": ["shaker", "tin", "tins"],
  "reverse dry shake": ["shaker", "tin", "tins"],
  "whip shake": ["shaker", "tin", "tins"],
  throw: ["shaker", "tin", "tins"],
  roll: ["shaker", "tin", "tins"],
  stir: ["mixing glass", "mixing beaker", "stirring glass"],
  swizzle: ["swizzle stick"],
  blend: ["blender"],
  muddle: ["muddler"],
  "fine strain": ["fine strainer", "fine sieve", "tea strainer"],
  "double strain": ["fine strainer", "fine sieve", "tea strainer"],
  strain: ["strainer"],
  carbonate: ["carbonator", "siphon", "soda siphon"],
};

/** The names that the tool for a technique goes by; absent where it needs none. */
export function toolsFor(technique: string): readonly [string, ...string[]] | undefined {
  return byTechnique[technique];
}

/** The words for why a figure is unknown, where a rule has to know them again. */

export function notDeclared(name: string): string {
  return `${name || "an ingredient without a name"} is in neither the house nor the larder`;
}

export function noAmount(name: string): string {
  return `how much ${name} goes in is not given`;
}

export function madeFromItself(name: string): string {
  return `${name} is made from itself`;
}

export function noWater(step: string): string {
  return `how much water “${step}” adds is not stated`;
}

export function noTemperature(step: string): string {
  return `how warm “${step}” makes it is not stated`;
}

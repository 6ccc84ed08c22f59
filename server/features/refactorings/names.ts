/** Names for what a refactoring makes, and how a name is written where it is called. */
import type { House } from "../../house/house.ts";
import type { Scope } from "../../house/scope.ts";

/** `Slip mix`, else `Slip mix 2`: nothing that is drunk or poured goes by it yet, in the house or in the larder. */
export function freshName(house: House, scope: Scope, wanted: string): string {
  const isTaken = (name: string) => (["drink", "ingredient"] as const).some((nameClass) => house.lookup(scope, nameClass, name).length > 0);
  for (let number = 1; ; number++) {
    const name = number === 1 ? wanted : `${wanted} ${number}`;
    if (!isTaken(name)) return name;
  }
}

/** As a field's value takes it: there only what splits or ends a value needs quotation marks. */
export function nameInField(name: string): string {
  return /;|(?:^|\s)#(?:\s|$)/.test(name) ? `"${name}"` : name;
}

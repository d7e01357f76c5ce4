import { found, type Outcome, refused } from "../../outcome";

/**
 * δ = ½·10^l, where u = c·10^l with a whole c of `digits` digits (JCGM 101:2008, 7.9.2): half the last digit of u that counts.
 * `u` in any unit, δ in the same; it is read from u written with so many digits, which ECMA-262 defines exactly. 9.96 with
 * two digits is 10, and δ 0.5.
 *
 * Refuses: u that is not finite ("not-finite") or not above 0 ("not-applicable": zero has no digits that count).
 */
export function numericalTolerance(u: number, digits: 1 | 2): Outcome<number> {
  if (!Number.isFinite(u)) return refused("not-finite", `A standard uncertainty of ${u}.`);
  if (!(u > 0)) return refused("not-applicable", `A standard uncertainty of ${u} has no digits that count.`);
  const written = u.toExponential(digits - 1);
  const exponent = Number(written.slice(written.indexOf("e") + 1)) - (digits - 1);
  return found(Number(`5e${exponent - 1}`));
}

/** Powers of ten of the SI prefixes (SI Brochure, 9th edition with the prefixes of 2022, table 7). */
const prefixes: Readonly<Record<string, number>> = {
  deca: 1,
  hecto: 2,
  kilo: 3,
  mega: 6,
  giga: 9,
  tera: 12,
  peta: 15,
  exa: 18,
  zetta: 21,
  yotta: 24,
  ronna: 27,
  quetta: 30,
  deci: -1,
  centi: -2,
  milli: -3,
  micro: -6,
  nano: -9,
  pico: -12,
  femto: -15,
  atto: -18,
  zepto: -21,
  yocto: -24,
  ronto: -27,
  quecto: -30,
};

/** Names the D-SI takes from the SI Brochure: base and derived units, those accepted beside them, and pure numbers. */
const units = new Set(
  (
    "one metre kilogram gram second ampere kelvin mole candela radian steradian hertz newton pascal joule watt coulomb " +
    "volt farad ohm siemens weber tesla henry degreecelsius lumen lux becquerel gray sievert katal day hour minute " +
    "degree arcminute arcsecond hectare litre tonne dalton electronvolt neper bel decibel astronomicalunit bar mmHg " +
    "angstrom nauticalmile barn knot percent ppm bit byte var"
  ).split(" "),
);

export type SiUnit = {
  /** The unit's value in units without prefix, as a power of ten. */
  readonly shift: number;
  /** Names with their exponents, sorted, e.g. "kelvin^-1 volt^1"; equal for what can be compared. */
  readonly dimension: string;
};

type Parsed = { readonly ok: true; readonly unit: SiUnit } | { readonly ok: false; readonly message: string };

const no = (message: string): Parsed => ({ ok: false, message });

/** One edit away: the slip of a finger, such as \voltt. */
const isNear = (one: string, other: string): boolean => {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (long.length - short.length > 1) return false;
  let at = 0;
  while (at < short.length && short[at] === long[at]) at += 1;
  const rest = long.length === short.length ? at + 1 : at;
  return short.slice(rest) === long.slice(at + 1);
};

const suggestion = (name: string): string => {
  const near = [...units, ...Object.keys(prefixes)].find((known) => isNear(name, known));
  return near === undefined ? "" : ` \\${near} is near it.`;
};

/** `\milli\volt\per\kelvin`, `\metre\tothe{2}`: the notation of the D-SI. */
export const siUnit = (written: string): Parsed => {
  const tokens = written.match(/\\[A-Za-z]+|\{[^{}]*\}|[\s\S]/g) ?? [];
  const exponents = new Map<string, number>();
  let shift = 0;
  let prefix: number | null = null;
  let sign = 1;
  let last: { readonly name: string; readonly sign: number; readonly prefix: number } | null = null;
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at] ?? "";
    const name = token.slice(1);
    if (token === "\\per") {
      if (prefix !== null || sign < 0) return no(`In "${written}" no unit stands before \\per.`);
      sign = -1;
      last = null;
    } else if (token === "\\tothe") {
      const exponent = Number(/^\{([+-]?\d+(?:\.\d+)?)\}$/.exec(tokens[at + 1] ?? "")?.[1] ?? Number.NaN);
      if (last === null || Number.isNaN(exponent))
        return no(`In "${written}" \\tothe needs a unit before and {number} after it.`);
      exponents.set(last.name, (exponents.get(last.name) ?? 0) + last.sign * (exponent - 1));
      shift += last.sign * last.prefix * (exponent - 1);
      last = null;
      at += 1;
    } else if (token.startsWith("\\") && Object.hasOwn(prefixes, name) && prefix === null) {
      prefix = prefixes[name] ?? 0;
    } else if (token.startsWith("\\") && units.has(name)) {
      exponents.set(name, (exponents.get(name) ?? 0) + sign);
      shift += sign * (prefix ?? 0);
      last = { name, sign, prefix: prefix ?? 0 };
      prefix = null;
      sign = 1;
    } else
      return no(
        `"${written}" is no unit of the D-SI.${token.startsWith("\\") ? suggestion(name) : ""} Units are written like \\degreecelsius, \\milli\\volt or \\volt\\per\\kelvin.`,
      );
  }
  if (prefix !== null || sign < 0 || exponents.size === 0) return no(`"${written}" ends before a unit.`);
  const dimension = [...exponents]
    .filter(([name, exponent]) => exponent !== 0 && name !== "one")
    .map(([name, exponent]) => `${name}^${exponent}`)
    .sort()
    .join(" ");
  return { ok: true, unit: { shift, dimension } };
};

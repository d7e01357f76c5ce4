import type { DccCertificate, DccData, DccTable } from "@/lib/domain/calibration/dcc-certificate";
import type { DccProposal, DccProposals } from "@/lib/domain/calibration/dcc-proposal";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { offerThermometer, offerVoltmeter } from "./offer-instrument";
import { offerReference } from "./offer-reference";
import { plainText, type TableRows, tableRows } from "./table-columns";

const isType = (letter: string): letter is ThermocoupleType => Object.hasOwn(referenceFunctions, letter);

/** Types named in words such as "type S" or "Typ K", or the pairs of pure metals. */
const typesNamed = (certificate: DccCertificate): readonly ThermocoupleType[] => {
  const words = certificate.items
    .flatMap(({ name, description }) => [...name, ...description])
    .map(({ text }) => text)
    .join("\n");
  const letters = [
    ...words.matchAll(/\btypen?[\s-]*([A-Z])\b|\btyp[\s-]*([A-Z])\b|\b(Au\/Pt|Pt\/Pd)\b/gi),
  ].map((match) => match[3] ?? (match[1] ?? match[2] ?? "").toUpperCase());
  return [...new Set(letters)].filter(isType);
};

type Named = { readonly title: string; readonly table: DccTable };

const tablesOf = (title: string, tables: readonly DccTable[]): readonly Named[] =>
  tables.flatMap((table, index) => {
    const own = plainText(table.name);
    const name =
      own === "" ? (tables.length > 1 ? `${title}, table ${index + 1}` : title) : `${title}: ${own}`;
    return [{ title: name, table }, ...tablesOf(name, table.tables)];
  });

/** Quantities that stand beside each other without a table are a table of their own. */
const rowsIn = (title: string, place: DccTable["place"], data: DccData): readonly TableRows[] => [
  ...(data.quantities.length > 1 ? [tableRows(title, place, data.quantities)] : []),
  ...tablesOf(title, data.tables).map(({ title: name, table }) =>
    tableRows(name, table.place, table.quantities),
  ),
];

const reasonOf = (table: TableRows): string => {
  const found = table.figures.map(
    ({ name, role, kind }) => `${name === "" ? role : name} (${kind === "celsius" ? "°C" : "µV"})`,
  );
  const others = table.others.map(
    ({ name, columns }) => `${plainText(name) || "unnamed"} (${columns[0]?.units[0] ?? "no numbers"})`,
  );
  const all = [...found, ...others];
  return `No proposal from "${table.title}": a temperature and an emf, a deviation or an error belong together, or a voltage and its error. It has ${all.length === 0 ? "no columns" : all.join(", ")}. Enter the values by hand.`;
};

/** An emf is compared with a reference function that has its junction at 0 °C; another temperature must not be missed. */
const junctionRemarks = (certificate: DccCertificate): readonly string[] =>
  certificate.conditions
    .filter(({ kind }) => kind === "reference-junction")
    .flatMap(({ data }) => data.quantities)
    .flatMap(({ columns }) => columns)
    .filter(({ numbers, units }) => {
      const celsius = (numbers[0] ?? 0) - (units[0] === "\\kelvin" ? 273.15 : 0);
      return (units[0] === "\\kelvin" || units[0] === "\\degreecelsius") && Math.abs(celsius) > 0.5;
    })
    .map(
      ({ written, units }) =>
        `The reference junction stood at ${written[0]} ${units[0]}: make sure that the emf is given for a junction at 0 °C.`,
    );

const withRemarks = (offer: DccProposal, remarks: readonly string[]): DccProposal => ({
  ...offer,
  remarks: [...remarks, ...offer.remarks],
});

/**
 * What the results of a certificate would put into the form of a calibration, value by value with the place it came
 * from: proposals only, for a person to confirm beside the certificate. `known` is the type of the standard in our
 * records; without it the words of the item decide, and where these name none or several, nothing is computed.
 */
export const tableForReference = (certificate: DccCertificate, known?: ThermocoupleType): DccProposals => {
  const named = typesNamed(certificate);
  const type = known ?? (named.length === 1 ? (named[0] ?? null) : null);
  const remarks: string[] = [];
  if (known && named.length > 0 && !named.includes(known))
    remarks.push(
      `The certificate speaks of type ${named.join(" and ")}, our record of type ${known}: make sure it is the same thermocouple.`,
    );
  if (!known && type) remarks.push(`Type ${type} was read from the words of the item.`);
  if (certificate.items.length > 1)
    remarks.push(
      `The certificate has ${certificate.items.length} items: make sure that this table belongs to yours.`,
    );
  remarks.push(...junctionRemarks(certificate));
  const offers: DccProposal[] = [];
  const reasons: { message: string; place: DccTable["place"] }[] = [];
  for (const result of certificate.results)
    for (const table of rowsIn(plainText(result.name), result.place, result.data)) {
      const offer = offerReference(table, type) ?? offerThermometer(table) ?? offerVoltmeter(table);
      if (offer) offers.push(withRemarks(offer, remarks));
      else if (table.figures.length + table.others.length > 0)
        reasons.push({ message: reasonOf(table), place: table.place });
    }
  return { offers, reasons };
};

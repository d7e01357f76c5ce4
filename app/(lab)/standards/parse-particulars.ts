import { number, optionalNumber, optionalText, text } from "@/lib/web/form-fields";

const numbersOf: Readonly<Record<string, readonly string[]>> = {
  reference: ["driftHalfWidthCelsius", "inhomogeneityRelativeHalfWidth"],
  voltmeter: ["driftHalfWidthMicrovolt", "resolutionMicrovolt"],
  scanner: ["parasiticHalfWidthMicrovolt"],
  junction: ["celsius", "halfWidthCelsius"],
  thermometer: ["driftHalfWidthCelsius"],
  lead: ["correctionMicrovolt", "halfWidthMicrovolt", "fromCelsius", "toCelsius"],
  ambient: ["driftHalfWidthCelsius"],
};

/** What is chosen or written as words. */
const wordsOf: Readonly<Record<string, readonly string[]>> = {
  reference: ["type", "protection"],
  thermometer: ["element"],
  lead: ["form", "type", "class", "lot"],
};

/** Left out where nothing was written: the record then says nothing of them. */
const optionalNumbersOf: Readonly<Record<string, readonly string[]>> = {
  reference: ["interpolationHalfWidthCelsius"],
  junction: ["spreadHalfWidthCelsius"],
  ambient: ["driftHalfWidthPercent"],
};

/** The fields of the kind the form was made for; the schema of that kind judges them. */
export const parseParticulars = (data: FormData): Record<string, unknown> => {
  const kind = text(data, "particulars.kind");
  const figures = (numbersOf[kind] ?? []).map((name) => [name, number(data, `particulars.${name}`)] as const);
  const optional = (optionalNumbersOf[kind] ?? []).map(
    (name) => [name, optionalNumber(data, `particulars.${name}`)] as const,
  );
  if (kind === "furnace") return { kind };
  const words = wordsOf[kind] ?? [];
  return {
    kind,
    ...Object.fromEntries(words.map((name) => [name, text(data, `particulars.${name}`)])),
    ...Object.fromEntries([...figures, ...optional].filter(([, value]) => value !== undefined)),
    ...(kind === "junction" && optionalText(data, "particulars.block")
      ? { block: text(data, "particulars.block") }
      : {}),
    basis: text(data, "particulars.basis"),
  };
};

import { number, text } from "@/lib/web/form-fields";

const numbersOf: Readonly<Record<string, readonly string[]>> = {
  reference: ["driftHalfWidthCelsius", "inhomogeneityRelativeHalfWidth"],
  voltmeter: ["driftHalfWidthMicrovolt", "resolutionMicrovolt"],
  scanner: ["parasiticHalfWidthMicrovolt"],
  junction: ["celsius", "halfWidthCelsius"],
};

/** The fields of the kind the form was made for; the schema of that kind judges them. */
export const parseParticulars = (data: FormData): Record<string, unknown> => {
  const kind = text(data, "particulars.kind");
  const figures = (numbersOf[kind] ?? []).map((name) => [name, number(data, `particulars.${name}`)] as const);
  const words = kind === "reference" ? ["type", "protection"] : [];
  return {
    kind,
    ...Object.fromEntries(words.map((name) => [name, text(data, `particulars.${name}`)])),
    ...Object.fromEntries(figures),
    basis: text(data, "particulars.basis"),
  };
};

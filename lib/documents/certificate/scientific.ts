const superscripts: Readonly<Record<string, string>> = {
  "-": "⁻",
  ...Object.fromEntries([..."⁰¹²³⁴⁵⁶⁷⁸⁹"].map((raised, digit) => [String(digit), raised])),
};

/** "-5.9e-2" as −5.9 × 10⁻²: the same digits, set as they are read. */
export const scientific = (text: string): string => {
  const [mantissa = text, exponent = "0"] = text.split("e");
  if (Number(mantissa) === 0) return "0";
  const set = mantissa.replace("-", "\u2212");
  const power = String(Number(exponent));
  return power === "0" ? set : `${set} × 10${[...power].map((sign) => superscripts[sign]).join("")}`;
};

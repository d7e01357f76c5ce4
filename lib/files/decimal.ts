/** A decimal number as written in a file. `mark` tells which decimal mark was used, if any. */
export type DecimalText =
  | {
      readonly kind: "number";
      readonly value: number;
      readonly mark: "." | "," | null;
      readonly grouped: boolean;
    }
  | { readonly kind: "empty" }
  | { readonly kind: "not-a-number" }
  | { readonly kind: "both-marks" }
  | { readonly kind: "out-of-range" };

const shape = /^([+\-−]?)(\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE]([+\-−]?\d{1,3}))?$/;
/** "10,503": ten point five or ten thousand. Whether it is doubtful depends on the rest of the file. */
const groupedShape = /^[1-9]\d{0,2},\d{3}$/;

/**
 * Reads a decimal and shifts its point by `shift` places in the text, before it becomes binary:
 * 10.503 mV is 10503 µV exactly, while 10.503 × 1000 is not.
 */
export const decimal = (written: string, shift: number): DecimalText => {
  const text = written.trim();
  if (text === "") return { kind: "empty" };
  const match = shape.exec(text);
  if (!match) return { kind: text.includes(",") && text.includes(".") ? "both-marks" : "not-a-number" };
  const digits = match[2] ?? "";
  const mark = digits.includes(",") ? "," : digits.includes(".") ? "." : null;
  const sign = match[1] === "-" || match[1] === "−" ? "-" : "";
  const exponent = Number((match[3] ?? "0").replace("−", "-")) + shift;
  const value = Number(`${sign}${digits.replace(",", ".")}e${exponent}`);
  if (!Number.isFinite(value)) return { kind: "out-of-range" };
  return { kind: "number", value, mark, grouped: groupedShape.test(digits) };
};

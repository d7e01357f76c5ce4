import type { OrderSnapshot } from "./order-snapshot";

const lineText = (says: Readonly<Record<string, string>>, index: number): string =>
  `Line ${index + 1}: ${Object.entries(says)
    .filter(([, text]) => text !== "")
    .map(([label, text]) => `${label}: ${text}`)
    .join("; ")}`;

/** What the customer wrote, kept as it came before the desk puts its own words in place of it (ISO/IEC 17025:2017, 7.1.8). */
export const requestText = ({ terms, lines }: OrderSnapshot): string =>
  [
    "As requested.",
    ...lines.map(({ says }, index) => lineText(says, index)),
    terms.note && `Note: ${terms.note}`,
  ]
    .filter(Boolean)
    .join("\n")
    .slice(0, 8000);

import { publishedValues } from "./published-value";

const provenance = "read";
const guide = "EURACHEM/CITAC Guide QUAM:2012, appendix";
const byGtc = "as computed by the GUM Tree Calculator of the Measurement Standards Laboratory of New Zealand";

const cut = (lastDigit: number) => ({ absolute: lastDigit, reason: "cut after this digit, not rounded" });

/** Cadmium standard, mg/L. */
export const quamA1 = publishedValues(
  "QUAM A1 to A3",
  { document: `${guide} A1, ${byGtc}`, readAt: "MSLNZ/GTC: docs/API/CITAC_A1.rst", provenance },
  {
    a1Value: ["c_Cd", "1002.7"],
    a1Combined: ["u(c_Cd)", "0.835199"],
    a1Mass: ["contribution of m", "0.49995"],
    a1Temperature: ["contribution of V_T", "0.486284"],
    a1Flask: ["contribution of V_flask", "0.40935"],
    a1Filling: ["contribution of V_rep", "0.20054"],
    a1Purity: ["contribution of P", "0.0578967"],
    a1Volume: ["contribution of V, its three parts together", "0.666525"],
  },
);

/** Sodium hydroxide, mol/L. */
export const quamA2 = publishedValues(
  "QUAM A1 to A3",
  { document: `${guide} A2, ${byGtc}`, readAt: "MSLNZ/GTC: docs/API/CITAC_A2.rst", provenance },
  {
    a2Value: ["c_NaOH", "0.102136159706", cut(1e-12)],
    a2Combined: ["u(c_NaOH)", "0.000100500722124", cut(1e-15)],
    a2Volume: ["contribution of V_T", "7.47292E-05"],
    a2Repeatability: ["contribution of R", "5.10681E-05"],
    a2Mass: ["contribution of m_KHP", "3.21735E-05"],
    a2Purity: ["contribution of P_KHP", "2.94842E-05"],
    a2Molar: ["contribution of M_KHP", "1.88312E-06"],
  },
);

/** Hydrochloric acid, mol/L. */
export const quamA3 = publishedValues(
  "QUAM A1 to A3",
  { document: `${guide} A3, ${byGtc}`, readAt: "MSLNZ/GTC: docs/API/CITAC_A3.rst", provenance },
  {
    a3Value: ["c_HCl", "0.10139"],
    a3Combined: ["u(c_HCl)", "0.0001843", cut(1e-7)],
    a3Repeatability: ["contribution of R", "0.000101387"],
    a3VolumeTwo: ["contribution of V_T2", "9.69953E-05"],
    a3VolumeOne: ["contribution of V_T1", "8.33653E-05"],
    a3Aliquot: ["contribution of V_HCl", "7.39151E-05"],
    a3Mass: ["contribution of m_KHP", "3.19376E-05"],
    a3Purity: ["contribution of P_KHP", "2.9268E-05"],
    a3Molar: ["contribution of M_KHP", "1.86931E-06"],
  },
);

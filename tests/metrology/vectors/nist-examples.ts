import { publishedValues } from "./published-value";

/** Linear thermal expansion in 1/°C, and the Stefan–Boltzmann constant in W·m⁻²·K⁻⁴, from their inputs. */
export const nistExamples = publishedValues(
  "NIST TN 1900 and Uncertainty Machine",
  {
    document: "NIST TN 1900 (2015), example E13, and NIST Uncertainty Machine user's manual, example 10",
    readAt: "sandialabs/suncal: test/test_examples.py",
    provenance: "read",
  },
  {
    expansion: ["E13: coefficient of expansion", "1.7266E-5"],
    uExpansion: ["E13: u of it, linear propagation", "1.76E-6"],
    stefanBoltzmann: ["example 10: σ", "5.67037E-8"],
    uStefanBoltzmann: ["example 10: u(σ)", "2.05E-13"],
  },
);

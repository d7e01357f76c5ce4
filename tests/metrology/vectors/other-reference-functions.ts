/**
 * emf in µV of the types that NIST SRD 60 does not have, recomputed from the published coefficients in high precision by an
 * independent program and rounded as given. The documents of the coefficients stand in each type's file.
 */
export const otherReferenceFunctions: readonly {
  readonly type: "C" | "A" | "Au/Pt" | "Pt/Pd";
  readonly celsius: number;
  readonly microvolt: string;
}[] = [
  { type: "C", celsius: 100, microvolt: "1451.5" },
  { type: "C", celsius: 426, microvolt: "7228.2" },
  { type: "C", celsius: 500, microvolt: "8656.9" },
  { type: "C", celsius: 1000, microvolt: "18260.2" },
  { type: "C", celsius: 1500, microvolt: "26729.0" },
  { type: "C", celsius: 2000, microvolt: "33669.1" },
  { type: "C", celsius: 2315, microvolt: "37069.8" },
  { type: "A", celsius: 1000, microvolt: "16127.6" },
  { type: "A", celsius: 2500, microvolt: "33639.9" },
  { type: "Au/Pt", celsius: 29.7646, microvolt: "196.260" },
  { type: "Au/Pt", celsius: 156.5985, microvolt: "1350.942" },
  { type: "Au/Pt", celsius: 231.928, microvolt: "2236.184" },
  { type: "Au/Pt", celsius: 419.527, microvolt: "4945.627" },
  { type: "Au/Pt", celsius: 660.323, microvolt: "9320.441" },
  { type: "Au/Pt", celsius: 961.78, microvolt: "16120.495" },
  { type: "Au/Pt", celsius: 1000, microvolt: "17085.310" },
  { type: "Pt/Pd", celsius: 419.527, microvolt: "2964.348" },
  { type: "Pt/Pd", celsius: 660.323, microvolt: "5782.381" },
  { type: "Pt/Pd", celsius: 961.78, microvolt: "10813.090" },
  { type: "Pt/Pd", celsius: 1064.18, microvolt: "12853.206" },
  { type: "Pt/Pd", celsius: 1084.62, microvolt: "13277.649" },
  { type: "Pt/Pd", celsius: 1500, microvolt: "22931.657" },
];

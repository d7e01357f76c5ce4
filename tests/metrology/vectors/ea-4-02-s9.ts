import { publishedValues } from "./published-value";

/** Neither example was found in a text that can be opened: inputs and results from memory. */
export const eaDominantRemembered = publishedValues(
  "EA-4/02 S9 and S10, dominant rectangles",
  { document: "EA-4/02, supplement 2, S9 and S10", readAt: "", provenance: "from-memory" },
  {
    multimeterFactor: ["S9, multimeter at 100 V: k of one dominant rectangle", "1.65"],
    multimeterExpanded: ["S9: U, V", "0.05"],
    calliperFactor: ["S10, vernier calliper: k of two dominant rectangles", "1.83"],
    calliperExpanded: ["S10: U, mm", "0.06"],
  },
);

import type { EntryFigures } from "@/lib/domain/equipment/logbook";

/** What follows from an entry by itself, said before it is written. */
export const entryConsequence: Readonly<Record<EntryFigures["kind"], string>> = {
  verification:
    "Passed, equipment that was received, suspect or repaired is verified, and can be put into service.",
  "intermediate-check": "Beyond its limit, the check has failed and the equipment is suspect at once.",
  maintenance: "The next maintenance counts from this day.",
  damage: "The equipment is suspect at once: no run can choose it, and open runs say so.",
  repair: "The equipment is under repair until it is verified anew.",
  adjustment: "The equipment is under repair until it is verified anew; think of its calibration too.",
  anneal: "It is not chosen until a check has passed after it.",
  "check-after-anneal": "Beyond its limit, the check has failed and the reference is suspect at once.",
  move: "Its record says the new place from now on.",
  note: "Nothing follows from a note.",
};

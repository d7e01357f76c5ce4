/**
 * What people are told where the hot work is done. Each defers to local rules and the maker's manual: a page knows
 * neither this furnace nor this building.
 */
export type HotWorkCaution = { readonly title: string; readonly text: string };

export const hotWorkCautions: readonly HotWorkCaution[] = [
  {
    title: "Burns",
    text: "A furnace at 1200 °C and what comes out of it burn skin at once and set things alight, long after the glow is gone. Gloves, face shield and clothing as the local rules say; a marked place, on ceramic, for what is hot.",
  },
  {
    title: "Fumes",
    text: "PTFE, PFA and PVC near heat give off toxic fumes; oil and marker ink burn off. Clean the sensors, keep leads out of the heat, run the extraction the local rules ask for. If it smells, leave and let it cool.",
  },
  {
    title: "Ceramic fibre",
    text: "Fibre wool and old insulation shed dust that harms lungs, above all after it has been hot. Do not cut, blow or sweep it dry; protect breathing as the maker's safety sheet says.",
  },
  {
    title: "Quenching tubes",
    text: "Ceramic tubes and sheaths crack when they are pulled out or pushed in fast, and throw splinters; quenched platinum is spoilt for the next run. Move slowly and keep to the maker's ramp limits.",
  },
  {
    title: "Electricity",
    text: "A furnace draws mains current, and hot alumina conducts. Earth what the maker's manual says is to be earthed, isolate before reaching in, and leave repairs to licensed people.",
  },
  {
    title: "Hardware cutout",
    text: "Over-temperature protection is a hardware cutout of its own, set and tested before the run. Software, this one included, is never one and never stands in for one.",
  },
];

export const cautionsDefer =
  "Local rules, the maker's manuals and the practice of licensed trades hold, whatever a page here says.";

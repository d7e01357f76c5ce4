import { procedures } from "../run/procedure-defaults";

/** What a laboratory begins with: revision 1 of each, which it replaces by revisions of its own. */
export const foundingProcedures = [
  {
    key: "tube-furnace",
    title: "Comparison in a tube furnace",
    budget: procedures["tube-furnace"],
    verification:
      "The platform's own: evaluated against EA-4/02 M:2013, example S5, and against simulated furnaces of known truth. The laboratory verifies it with its own equipment.",
  },
  {
    key: "ea-4-02-s5",
    title: "EA-4/02 example S5, as published",
    budget: procedures["ea-4-02-s5"],
    verification: "Gives the published figures of EA-4/02 M:2013, example S5.",
  },
] as const;

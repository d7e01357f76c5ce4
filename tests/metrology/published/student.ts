import { normalQuantile } from "@/lib/metrology/number/normal";
import { studentQuantile } from "@/lib/metrology/number/student";
import { fractions, gumTableG2, handbookStudent } from "../vectors/published-student";
import { tableChecks } from "./check";

export const studentChecks = [
  ...tableChecks(gumTableG2, ({ percent, nu }) =>
    nu === null ? normalQuantile((1 + fractions[percent]) / 2) : studentQuantile(fractions[percent], nu),
  ),
  ...tableChecks(handbookStudent, ({ exceeding, nu }) => studentQuantile(1 - 2 * exceeding, nu)),
];

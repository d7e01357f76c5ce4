import { nistTableB } from "./nist-table-b";
import { nistTableE } from "./nist-table-e";
import { nistTableJ } from "./nist-table-j";
import { nistTableK } from "./nist-table-k";
import { nistTableN } from "./nist-table-n";
import { nistTableR } from "./nist-table-r";
import { nistTableS } from "./nist-table-s";
import { nistTableT } from "./nist-table-t";

/** Check values of NIST SRD 60 by type. */
export const nistTables = {
  B: nistTableB,
  E: nistTableE,
  J: nistTableJ,
  K: nistTableK,
  N: nistTableN,
  R: nistTableR,
  S: nistTableS,
  T: nistTableT,
} as const;

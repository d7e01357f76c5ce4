import { nistTableK } from "./nist-table-k";
import { nistTableN } from "./nist-table-n";
import { nistTableR } from "./nist-table-r";
import { nistTableS } from "./nist-table-s";

/** Check values of NIST SRD 60 by type. */
export const nistTables = { K: nistTableK, N: nistTableN, R: nistTableR, S: nistTableS } as const;

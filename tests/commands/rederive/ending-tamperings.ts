import type { Tampering } from "./tamperings";

const amended = "UPDATE certificate_ending SET";
const only = "WHERE kind = 'amended'";
const step = "log and records";
const ending = /^ending of certificate C-\d{4}-0002$/;
const decision = /^decision that ended certificate C-\d{4}-0002$/;
const other = /the log says .* the record has/;

/** A superuser's hand in what became of a certificate: -0002 was amended, -0003 withdrawn, the others stand. */
export const endingTamperings: readonly Tampering[] = [
  ["an amendment made a replacement", step, ending, other, `${amended} kind = 'replaced' ${only}`],
  [
    "another certificate said to follow",
    step,
    ending,
    other,
    `${amended} successor_id = (SELECT id FROM certificate WHERE number LIKE '%-0001') ${only}`,
  ],
  [
    "an amendment made a withdrawal",
    step,
    ending,
    other,
    `${amended} kind = 'withdrawn', successor_id = NULL ${only}`,
  ],
  ["another reason", step, decision, other, `${amended} reason = 'a harmless one' ${only}`],
  ["another moment", step, decision, other, `${amended} decided_at = decided_at - interval '1 day' ${only}`],
  [
    "another who decided",
    step,
    decision,
    other,
    `${amended} decided_by_id = (SELECT id FROM person WHERE id <> decided_by_id LIMIT 1) ${only}`,
  ],
  [
    "a withdrawal undone",
    step,
    /^ending of certificate C-\d{4}-0003$/,
    /the log tells of it \(withdrawn\), but it is not there/,
    "DELETE FROM certificate_ending WHERE kind = 'withdrawn'",
  ],
  [
    "a withdrawal invented",
    step,
    /^ending of certificate C-\d{4}-0001$/,
    /the log does not tell of it/,
    `INSERT INTO certificate_ending (certificate_id, customer_id, kind, reason, decided_by_id, decided_at)
     SELECT id, customer_id, 'withdrawn', 'forged', signed_by_id, signed_at FROM certificate WHERE number LIKE '%-0001'`,
  ],
];

import { cutAfter, rewrittenFrom } from "@/tests/support/rewrite-log";

/** A superuser's hand in each kind of record, and what has to be said of it: name, step, record, reason, SQL. */
export type Tampering = readonly [name: string, step: string, record: RegExp, reason: RegExp, sql: string];

const firstOf = (table: string, order: string) => `(SELECT min(${order}::text) FROM ${table})`;
const oneMeasured = "id = (SELECT id FROM result WHERE state = 'measured' ORDER BY id LIMIT 1)";
const firstCertificate = `number = ${firstOf("certificate", "number")}`;
const anyBlock = "(SELECT id FROM scan_block ORDER BY run_id, sequence LIMIT 1)";

export const tamperings: readonly Tampering[] = [
  [
    "an audit event edited",
    "audit log",
    /^audit event 5$/,
    /not as it was/,
    "UPDATE audit_event SET entity_id = 'x' WHERE sequence = 5",
  ],
  [
    "the log rewritten from an event on, with chain and head",
    "checkpoints",
    /^audit event \d+$/,
    /the log was rewritten: its event \d+ is not the one that certificate C-\d{4}-0001 was signed over/i,
    rewrittenFrom(5, "at_microseconds = at_microseconds + 1"),
  ],
  [
    "the log set back to before the last certificate, with its head",
    "checkpoints",
    /^audit event \d+$/,
    /cut or set back: it ends before event \d+, which certificate C-\d{4}-\d{4} was signed over\. It holds up to event \d+\./,
    cutAfter("(SELECT max(log_sequence) - 1 FROM certificate)"),
  ],
  [
    "one bit of one reading",
    "scan blocks",
    /^scan block \d+ of run /,
    /readings of channel .* not as received/,
    `UPDATE scan_block_channel SET values = set_bit(values, 3, 1 - get_bit(values, 3)) WHERE block_id = ${anyBlock} AND ordinal = 0`,
  ],
  [
    "a window moved onto other blocks",
    "scan blocks",
    /^stability window \d+ of run /,
    /blocks it was accepted over/,
    "UPDATE stability_window SET blocks_digest = sha256('x') WHERE id = (SELECT min(id) FROM stability_window)",
  ],
  [
    "a reading of a furnace's survey",
    "characterisations",
    /^survey (axial|positions|stability|immersion) at \d+ °C of CH-/,
    /evaluated anew from its readings, it is another/,
    `UPDATE characterisation_survey SET readings = regexp_replace(readings, '"minutes":30,"value":([0-9]+)', '"minutes":30.5,"value":\\1') WHERE kind = 'stability'`,
  ],
  [
    "a figure that a budget rests on",
    "characterisations",
    /^characterisation of \d{4}-\d{2}-\d{2} from CH-/,
    /figures are not those of its surveys/,
    `UPDATE characterisation SET figures = regexp_replace(figures, '"halfWidthCelsius":0[.][0-9]', '"halfWidthCelsius":0.0')
      WHERE source = 'measured'`,
  ],
  [
    "the last digit of a result",
    "results",
    /^evaluation 1 of run .*, T-\d+ at ./,
    /the result is another/,
    `UPDATE result SET point = regexp_replace(point, '"combinedMicrovolt":([0-9.]+)', '"combinedMicrovolt":\\11') WHERE ${oneMeasured}`,
  ],
  [
    "a result filed under another state",
    "results",
    /^evaluation/,
    /filed under another/,
    `UPDATE result SET state = 'invalid' WHERE ${oneMeasured}`,
  ],
  ["a result removed", "results", /^evaluation/, /is missing/, `DELETE FROM result WHERE ${oneMeasured}`],
  [
    "the evidence beneath the results",
    "results",
    /^evaluation/,
    /evidence is not what/,
    `UPDATE evaluation SET evidence = replace(evidence, '"origin":"', '"origin": "')`,
  ],
  [
    "a finding suppressed or invented",
    "results",
    /^evaluation/,
    /findings are others/,
    `UPDATE evaluation SET findings = '[{"code":"x","message":"x","path":"x"}]'`,
  ],
  [
    "the evidence with its digest recomputed",
    "results",
    /^evaluation/,
    /the result is another|findings are others/,
    `UPDATE evaluation SET evidence = regexp_replace(evidence, '"celsius":0,', '"celsius":1,', 'g');
     UPDATE evaluation SET inputs_digest = sha256(convert_to(evidence, 'UTF8') || blocks_digest)`,
  ],
  [
    "one character of a certificate's content",
    "certificates",
    /^certificate C-\d{4}-0001$/,
    /not what was signed/,
    `UPDATE certificate SET content = replace(content, '"rows":[', '"rows": [') WHERE ${firstCertificate}`,
  ],
  [
    "a certificate's result with its hash recomputed",
    "certificates",
    /^certificate C-\d{4}-0001$/,
    /states other results/,
    `UPDATE certificate SET content = regexp_replace(content, '"errorCelsius":"[^"]*"', '"errorCelsius":"0.0"') WHERE ${firstCertificate};
     UPDATE certificate SET content_hash = sha256(convert_to(content, 'UTF8')) WHERE ${firstCertificate}`,
  ],
  [
    "a certificate removed from the middle",
    "certificates",
    /^certificate C-\d{4}-0003$/,
    /number 2 of C-\d{4} is missing/,
    `DELETE FROM certificate_file WHERE certificate_id = (SELECT id FROM certificate WHERE number LIKE '%-0002');
     DELETE FROM certificate WHERE number LIKE '%-0002'`,
  ],
  [
    "the price of an offer",
    "offers and papers",
    /^offer Q-\d{4}-0001$/,
    /not what its hash says/,
    `UPDATE quotation SET content = replace(content, '"total":', '"total":1') WHERE number = ${firstOf("quotation", "number")}`,
  ],
  [
    "the price of an offer with its hash recomputed",
    "log and records",
    /^offer Q-\d{4}-0001$/,
    /the log says content /,
    `UPDATE quotation SET content = replace(content, '"total":', '"total":1') WHERE number = ${firstOf("quotation", "number")};
     UPDATE quotation SET content_hash = sha256(convert_to(content, 'UTF8'))`,
  ],
  [
    "an answer to an offer turned round",
    "log and records",
    /^answer to offer Q-\d{4}-0001$/,
    /the log says agreed/,
    "UPDATE agreement SET answer = 'declined'",
  ],
  [
    "a delivery note replaced together with its hash",
    "offers and papers",
    /^delivery-note S-\d{4}-0001$/,
    /it has other bytes/,
    "UPDATE order_document SET bytes = 'x', sha256 = sha256('x') WHERE kind = 'delivery-note'",
  ],
  [
    "one byte of a document",
    "certificates",
    /^certificate /,
    /not those stored at issue/,
    "UPDATE certificate_file SET bytes = set_byte(bytes, 900, 65 + get_byte(bytes, 900) % 2)",
  ],
  [
    "a document replaced together with its hash",
    "seals",
    /^certificate /,
    /its seal does not hold: One byte was added/,
    `UPDATE certificate_file SET bytes = bytes || '\\x0a' WHERE media_type = 'application/pdf';
     UPDATE certificate_file SET sha256 = sha256(bytes)`,
  ],
  [
    "a key taken off the list",
    "seals",
    /^certificate /,
    /not on the list of/,
    "DELETE FROM seal_key_ending; DELETE FROM seal_key WHERE purpose = 'seal'",
  ],
  [
    "a key said to be revoked",
    "log and records",
    /^revoked key /,
    /the log does not tell of it/,
    `INSERT INTO seal_key_ending (seal_key_id, kind, reason, effective_at, recorded_at, recorded_by_id)
     SELECT id, 'revoked', 'forged', taken_up_at, taken_up_at, (SELECT id FROM person LIMIT 1) FROM seal_key`,
  ],
  [
    "an uncertainty in a chain",
    "chains",
    /^chain of certificate C-\d{4}-0001$/,
    /lets .* stand on something else/,
    "UPDATE trace_edge SET expanded = expanded / 2 WHERE role = 'reference'",
  ],
  [
    "a standard led past its calibration",
    "chains",
    /^chain of certificate C-\d{4}-0001$/,
    /is missing from its chain|stand on something else/,
    `UPDATE trace_edge SET to_id = (SELECT id FROM trace_node WHERE kind = 'national-standard' LIMIT 1) WHERE role = 'calibration'`,
  ],
  [
    "a certificate's name in a chain",
    "chains",
    /^chain of certificate C-\d{4}-0001$/,
    /says otherwise of/,
    "UPDATE trace_node SET title = 'X-1' WHERE kind = 'calibration'",
  ],
  [
    "a document replaced, said to be another renderer's",
    "log and records",
    /^document of certificate /,
    /the log says .* the record has/,
    "UPDATE certificate_file SET renderer_version = '0'",
  ],
  [
    "what was signed, rewritten in content, hash and document",
    "log and records",
    /^certificate /,
    /the log says/,
    `UPDATE certificate SET content = regexp_replace(content, '"purchaseOrder":"[^"]*"', '"purchaseOrder":"forged"');
     UPDATE certificate SET content_hash = sha256(convert_to(content, 'UTF8'));
     DELETE FROM certificate_file`,
  ],
  [
    // The evidence that the sealed document names says which engine it was.
    "an evaluation behind a certificate said to be another engine's",
    "certificates",
    /^certificate /,
    /other bytes/,
    "UPDATE evaluation SET engine_version = '0.9'",
  ],
  [
    "an evaluation removed with all that came of it",
    "log and records",
    /^evaluation /,
    /the log tells of it .* not there/,
    `DELETE FROM certificate_ending; DELETE FROM certificate_file; DELETE FROM certificate; DELETE FROM result; DELETE FROM evaluation`,
  ],
  [
    "the last block of a run removed",
    "scan blocks",
    /^stability window/,
    /blocks it was accepted over/,
    `DELETE FROM scan_block_channel WHERE block_id IN (SELECT DISTINCT ON (run_id) id FROM scan_block ORDER BY run_id, sequence DESC);
     DELETE FROM scan_block WHERE id IN (SELECT DISTINCT ON (run_id) id FROM scan_block ORDER BY run_id, sequence DESC)`,
  ],
];

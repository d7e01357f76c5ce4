/** What a certificate is written with; where its log stood and when it was measured, the database makes of its content. */
const columns =
  "id, number, customer_id, order_id, sensor_id, run_id, evaluation_id, content, content_hash, token, signed_by_id, signed_at";

/** Inserts one like another, changed by an SQL expression of jsonb. `which`: WHERE and what follows. */
export const copiedCertificate = (changed: string, which: string): string =>
  `INSERT INTO certificate (${columns})
   SELECT ${columns} FROM (
     SELECT (jsonb_populate_record(NULL::certificate, to_jsonb(c) || ${changed})).* FROM certificate c ${which}) AS copy`;

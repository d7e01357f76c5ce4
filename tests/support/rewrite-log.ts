/** What a superuser can do to the log once the triggers are off, with every hash made anew. */

/** The event's hash as the database would have made it. */
export const rehash = `sha256(previous_hash || audit_field(int8send(sequence)) || audit_field(int8send(at_microseconds))
  || audit_field(convert_to(actor_id, 'UTF8')) || audit_field(convert_to(action, 'UTF8'))
  || audit_field(convert_to(entity_kind, 'UTF8')) || audit_field(convert_to(entity_id, 'UTF8'))
  || audit_field(convert_to(payload, 'UTF8')))`;

const setHead = `UPDATE audit_head SET (sequence, hash) =
  (SELECT e.sequence, e.hash FROM audit_event e ORDER BY e.sequence DESC LIMIT 1)`;

/** Changes one event, and chain and head after it. */
export const rewrittenFrom = (sequence: number, change: string): string => `
  DO $$
  DECLARE
    before bytea := (SELECT previous_hash FROM audit_event WHERE sequence = ${sequence});
    at bigint;
  BEGIN
    UPDATE audit_event SET ${change} WHERE sequence = ${sequence};
    FOR at IN SELECT sequence FROM audit_event WHERE sequence >= ${sequence} ORDER BY sequence LOOP
      UPDATE audit_event SET previous_hash = before WHERE sequence = at;
      UPDATE audit_event SET hash = ${rehash} WHERE sequence = at RETURNING hash INTO before;
    END LOOP;
    ${setHead};
  END $$`;

/** Takes away what came after an event, and sets the head back to it: what an old backup is, too. */
export const cutAfter = (sequence: number | string): string =>
  `DELETE FROM audit_event WHERE sequence > ${sequence}; ${setHead}`;

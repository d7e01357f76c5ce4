import pg from "pg";

type Ending = {
  readonly number: string;
  readonly kind: "replaced" | "withdrawn";
  readonly successor?: string;
};

const insert = `
  INSERT INTO certificate_ending (certificate_id, customer_id, kind, reason, successor_id, decided_by_id, decided_at)
  SELECT c.id, c.customer_id, $2, 'a journey', n.id, c.signed_by_id, now()
    FROM certificate c LEFT JOIN certificate n ON n.number = $3 AND n.customer_id = c.customer_id
   WHERE c.number = $1`;

/** What is evidence cannot be taken away, but by whoever owns the server: its guards stand aside for this once. */
const putBack = `
  ALTER TABLE certificate_ending DISABLE TRIGGER USER;
  DELETE FROM certificate_ending WHERE reason = 'a journey';
  DO $$
  DECLARE
    guard name;
  BEGIN
    FOR guard IN SELECT tgname FROM pg_trigger WHERE tgrelid = 'certificate_ending'::regclass AND NOT tgisinternal LOOP
      EXECUTE format('ALTER TABLE certificate_ending ENABLE ALWAYS TRIGGER %I', guard);
    END LOOP;
  END $$`;

/**
 * Certificates that ended, while `work` looks at them; afterwards they stand as before, for the journeys that follow.
 * How one is ended is another journey's business.
 */
export const withEndings = async (endings: readonly Ending[], work: () => Promise<void>): Promise<void> => {
  const client = new pg.Client({ connectionString: process.env.E2E_DATABASE_URL ?? "" });
  await client.connect();
  try {
    // Nobody asked for these successors, and none names what it follows.
    await client.query("ALTER TABLE certificate_ending DISABLE TRIGGER guard_certificate_successor");
    for (const { number, kind, successor } of endings) {
      const { rowCount } = await client.query(insert, [number, kind, successor ?? null]);
      if (rowCount !== 1) throw new Error(`${number} cannot be ended: ${rowCount} rows`);
    }
    await work();
  } finally {
    await client.query(putBack);
    await client.end();
  }
};

export type Issued = {
  readonly number: string;
  readonly token: string;
  readonly contentHash: string;
  readonly file: Buffer;
};

/** Documents of one customer that stand as they were issued, as they lie in the database. */
export const issuedCertificates = async (count: number): Promise<readonly Issued[]> => {
  const client = new pg.Client({ connectionString: process.env.E2E_DATABASE_URL ?? "" });
  await client.connect();
  try {
    const { rows } = await client.query<Issued>(
      `SELECT c.number, c.token, encode(c.content_hash, 'hex') AS "contentHash", f.bytes AS file
         FROM certificate c JOIN certificate_file f ON f.certificate_id = c.id AND f.media_type = 'application/pdf'
        WHERE c.customer_id = (SELECT customer_id FROM certificate GROUP BY customer_id ORDER BY count(*) DESC, 1 LIMIT 1)
          AND NOT EXISTS (SELECT FROM certificate_ending e WHERE c.id IN (e.certificate_id, e.successor_id))
        ORDER BY c.number LIMIT $1`,
      [count],
    );
    if (rows.length < count) throw new Error(`only ${rows.length} documents are issued`);
    return rows;
  } finally {
    await client.end();
  }
};

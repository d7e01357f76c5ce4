import type { Tx } from "@/lib/data/in-scope";

export type CertificateSizeRow = {
  readonly number: string;
  readonly token: string;
  /** The order's number. */
  readonly order: string;
  /** null: the document is still to be made. */
  readonly size: number | null;
};

/** A customer's certificates, of one order or of all, with the length of their documents and without the bytes. */
export const certificateSizeRows = (
  tx: Tx,
  customerId: string,
  orderId: string | null,
): Promise<CertificateSizeRow[]> =>
  tx.$queryRaw<CertificateSizeRow[]>`
    SELECT certificate.number, certificate.token, customer_order.number AS "order",
           (SELECT octet_length(file.bytes) FROM certificate_file file
             WHERE file.certificate_id = certificate.id AND file.media_type = 'application/pdf'
             ORDER BY file.rendered_at LIMIT 1) AS size
      FROM certificate JOIN customer_order ON customer_order.id = certificate.order_id
     WHERE certificate.customer_id = ${customerId}::uuid
       AND (${orderId}::uuid IS NULL OR certificate.order_id = ${orderId}::uuid)
     ORDER BY certificate.number`;

import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { renderDeliveryNote } from "@/lib/documents/order/delivery-note";
import { renderOffer } from "@/lib/documents/order/render-offer";
import { sameBytes } from "@/lib/domain/audit/chain";
import { readOffer } from "@/lib/domain/quotation/content";
import { DeliveryNoteContent } from "@/lib/domain/shipment/content";
import { agreementFact, invoicingFact, offerFact } from "./facts";
import { Broken, counted, type Facts, laboratory } from "./step";

const rederiveOffers = async (recorded: Facts): Promise<number> => {
  const rows = await inScope(laboratory, (tx) =>
    tx.quotation.findMany({
      orderBy: { number: "asc" },
      select: { id: true, number: true, content: true, contentHash: true },
    }),
  );
  const numbers = new Map<string, string>();
  for (const { id, number, content, contentHash } of rows) {
    if (!sameBytes(sha256(Buffer.from(content, "utf8")), contentHash))
      throw new Broken(`offer ${number}`, "its content is not what its hash says");
    numbers.set(id, number);
    recorded.set(...offerFact(number, hex(contentHash)));
  }
  const answers = await inScope(laboratory, (tx) => tx.agreement.findMany());
  for (const { quotationId, answer, contentHash } of answers)
    recorded.set(...agreementFact(numbers.get(quotationId) ?? quotationId, answer, hex(contentHash)));
  return rows.length;
};

const render = (kind: string, content: string): Promise<Uint8Array> =>
  kind === "delivery-note"
    ? renderDeliveryNote(DeliveryNoteContent.parse(JSON.parse(content)))
    : renderOffer(readOffer(content));

/** Each paper made again from its content, one at a time: the same bytes. */
const rederiveDocuments = async (): Promise<number> => {
  const ids = await inScope(laboratory, (tx) =>
    tx.orderDocument.findMany({ orderBy: [{ kind: "asc" }, { number: "asc" }], select: { id: true } }),
  );
  for (const { id } of ids) {
    const row = await inScope(laboratory, (tx) => tx.orderDocument.findUniqueOrThrow({ where: { id } }));
    const name = `${row.kind} ${row.number}`;
    if (!sameBytes(sha256(row.bytes), row.sha256))
      throw new Broken(name, "its bytes are not what their hash says");
    if (!sameBytes(await render(row.kind, row.content), row.bytes))
      throw new Broken(name, "made again from its content, it has other bytes");
  }
  return ids.length;
};

const rederiveFiles = async (recorded: Facts): Promise<number> => {
  const files = await inScope(laboratory, (tx) =>
    tx.invoicingFile.findMany({ select: { number: true, bytes: true, sha256: true } }),
  );
  for (const { number, bytes, sha256: said } of files) {
    if (!sameBytes(sha256(bytes), said))
      throw new Broken(`file ${number}`, "its bytes are not what their hash says");
    recorded.set(...invoicingFact(number, hex(said)));
  }
  return files.length;
};

/** Offers, what was said to them, papers and files for invoicing: as their hashes, their contents and the log say. */
export const rederivePapers = async (recorded: Facts): Promise<string> => {
  const offers = await rederiveOffers(recorded);
  const papers = await rederiveDocuments();
  const files = await rederiveFiles(recorded);
  return `${counted(offers, "offer")}, ${counted(papers, "paper")} made again, ${counted(files, "file")} for invoicing`;
};

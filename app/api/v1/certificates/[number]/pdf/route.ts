import { documentResponse } from "@/app/api/certificates/document-response";
import { standingHeader } from "@/app/api/certificates/standing-header";
import { programActor } from "@/lib/domain/machine/program";
import { Refused } from "@/lib/domain/refusal";
import { fetchDocuments } from "@/lib/operations/certificate/download";
import { wireCertificateView } from "@/lib/views/machine/wire-certificates";
import { notHereProblem, problemResponse, programRoute } from "@/lib/web/program-route";
import type { NumberContext } from "../../../after";

const pending = () =>
  problemResponse(
    { title: "Not yet", status: 503, detail: "The document is still being made. Try again in a minute." },
    { "retry-after": "30" },
  );

/** The document. Whether the token opens it is asked in the token's own scope; then the platform hands it out. */
export const GET = programRoute("certificates:read", async (program, _request, { params }: NumberContext) => {
  const certificate = await wireCertificateView(program, (await params).number);
  if (!certificate) return notHereProblem();
  try {
    const [document] = await fetchDocuments(programActor(program), [certificate.token], () => new Date());
    return document
      ? documentResponse(
          document.bytes,
          `${document.number}.pdf`,
          "application/pdf",
          "attachment",
          standingHeader(document.standing),
        )
      : notHereProblem();
  } catch (error) {
    if (error instanceof Refused && error.refusal.code === "wrong-state") return pending();
    throw error;
  }
});

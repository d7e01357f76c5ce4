import { documentResponse, notHere } from "@/app/api/certificates/document-response";
import { offerPaperByLinkView } from "@/lib/views/agreement/offer-by-link";
import { connectDatabase } from "@/lib/web/connect-database";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** The paper of the offer that a link opens, while it opens it. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  connectDatabase();
  const paper = await offerPaperByLinkView((await params).token, new Date());
  return paper
    ? documentResponse(paper.bytes, `quotation-${paper.number}.pdf`, "application/pdf")
    : notHere();
}

import { Refused } from "@/lib/domain/refusal";
import { execute } from "@/lib/operations/execute";
import { exportEvidence } from "@/lib/operations/run/export-evidence";
import { currentActor } from "@/lib/web/auth";
import { refusalStatus } from "@/lib/web/refusal-status";

type Context = { readonly params: Promise<{ readonly number: string }> };

const plain = (status: number, message: string): Response =>
  new Response(message, {
    status,
    headers: { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" },
  });

/** The run's evidence as one file, for those who may have it; each export is in the audit log. */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const actor = await currentActor();
  if (!actor) return plain(401, "Sign in first.");
  try {
    const { fileName, text } = await execute(
      exportEvidence,
      actor,
      { run: (await params).number },
      () => new Date(),
    );
    return new Response(text, {
      headers: {
        "content-type": "application/json",
        "content-disposition": `attachment; filename="${fileName}"`,
        "cache-control": "no-store",
      },
    });
  } catch (error) {
    if (error instanceof Refused) return plain(refusalStatus[error.refusal.code], error.refusal.message);
    console.error("evidence export failed", error);
    return plain(500, "Something went wrong on our side.");
  }
};

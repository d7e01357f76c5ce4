import { Refused } from "@/lib/domain/refusal";
import { readingsLimitBytes } from "@/lib/domain/run/readings-limit";
import { may } from "@/lib/domain/staff/permissions";
import { execute } from "@/lib/operations/execute";
import { receiveReadings } from "@/lib/operations/run/receive-readings";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { foreignOriginMessage } from "@/lib/web/form-action";
import { isOwnOrigin } from "@/lib/web/origin";
import { receiveBody } from "@/lib/web/receive-body";
import { refusalStatus } from "@/lib/web/refusal-status";
import { type FormUpload, readFormUpload, uploadAnswer } from "./form-upload";

type Context = { readonly params: Promise<{ readonly number: string }> };

/** Room for the parts of a form round the file itself. */
const formOverheadBytes = 16_384;

const headerText = (request: Request, name: string): string | null => {
  const value = request.headers.get(name);
  if (value === null) return null;
  try {
    return decodeURIComponent(value);
  } catch {
    return null;
  }
};

const isForm = (request: Request): boolean =>
  (request.headers.get("content-type") ?? "").startsWith("multipart/form-data");

/** The file as the page's script sends it (the body is the file), or as a form without script sends it. */
const receive = async (request: Request): Promise<FormUpload> => {
  if (!isForm(request)) {
    const body = await receiveBody(request, readingsLimitBytes);
    return body.ok
      ? {
          ok: true,
          bytes: body.bytes,
          fileName: headerText(request, "x-file-name"),
          startedAt: headerText(request, "x-started-at") || undefined,
        }
      : body;
  }
  const body = await receiveBody(request, readingsLimitBytes + formOverheadBytes);
  return body.ok ? readFormUpload(body.bytes, request.headers.get("content-type") ?? "") : body;
};

/**
 * A readings file for one run. Origin and permission first; then the length as announced, before a byte is read; then
 * the bytes, compared with length and SHA-256; then, in one transaction, all of its readings or none.
 */
export const POST = async (request: Request, { params }: Context): Promise<Response> => {
  const { number } = await params;
  const answer = uploadAnswer(isForm(request), number);
  const { publicOrigin } = env();
  if (!isOwnOrigin(request.headers.get("origin"), publicOrigin))
    return answer(403, foreignOriginMessage(publicOrigin));
  const actor = await currentActor();
  if (!actor)
    return answer(401, "Your session has ended. Sign in again in another tab, then send this once more.");
  if (actor.kind === "system" || !may(actor.roles, "run.perform"))
    return answer(403, "Your roles do not allow this. Nothing was stored.");
  const upload = await receive(request);
  if (!upload.ok) return answer(upload.status, upload.message);
  try {
    const { fileName, bytes, startedAt } = upload;
    const stored = await execute(
      receiveReadings,
      actor,
      { run: number, fileName: fileName?.slice(0, 200) ?? null, bytes, startedAt },
      () => new Date(),
    );
    return answer(201, `${stored.readings} readings of ${stored.channels} channels stored.`, stored.findings);
  } catch (error) {
    if (error instanceof Refused) {
      const { code, message, fields } = error.refusal;
      return answer(refusalStatus[code], fields?.startedAt ?? message);
    }
    console.error("readings upload failed", error);
    return answer(500, "Something went wrong on our side and nothing was stored. Send it again.");
  }
};

import { requestWorkOnce } from "@/lib/operations/machine/request-work";
import { wireOrdersView } from "@/lib/views/machine/wire-orders";
import { jsonResponse, problemResponse, programRoute } from "@/lib/web/program-route";
import { receiveBody } from "@/lib/web/receive-body";
import { afterOf } from "../after";

const mostBytes = 1_048_576;

export const GET = programRoute("orders:read", async (program, request) =>
  jsonResponse(await wireOrdersView(program, afterOf(request))),
);

const parsed = (bytes: Uint8Array): unknown => {
  try {
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
};

export const POST = programRoute("orders:write", async (program, request) => {
  if (!/^application\/json\b/i.test(request.headers.get("content-type") ?? ""))
    return problemResponse({ title: "Not JSON", status: 415, detail: "Send application/json." });
  const body = await receiveBody(request, mostBytes);
  if (!body.ok) return problemResponse({ title: "The body", status: body.status, detail: body.message });
  const work = parsed(body.bytes);
  if (work === undefined)
    return problemResponse({
      title: "Not JSON",
      status: 400,
      detail: "The body is no JSON in UTF-8. Nothing was stored.",
    });
  const { number, isNew } = await requestWorkOnce(
    program,
    request.headers.get("idempotency-key"),
    work,
    () => new Date(),
  );
  return jsonResponse({ number }, isNew ? 201 : 200);
});

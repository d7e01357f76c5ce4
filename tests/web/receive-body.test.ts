import { createHash } from "node:crypto";
import { createServer, type Server } from "node:http";
import { type AddressInfo, connect } from "node:net";
import { Readable } from "node:stream";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type ReceivedBody, receiveBody } from "@/lib/web/receive-body";

/** A real server and raw sockets: an upload that is cut is cut by the network, not by a stand-in. */
const limit = 1000;
let server: Server;
let port: number;
let settled: (received: ReceivedBody) => void = () => {};

beforeAll(async () => {
  server = createServer(async (incoming, response) => {
    const received = await receiveBody(
      new Request("http://localhost/", {
        method: "POST",
        headers: incoming.headers as Record<string, string>,
        body: Readable.toWeb(incoming) as ReadableStream<Uint8Array>,
        duplex: "half",
      } as RequestInit),
      limit,
    );
    response.end();
    settled(received);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  port = (server.address() as AddressInfo).port;
});
afterAll(() => new Promise<void>((resolve) => server.close(() => resolve())));

/** Sends these bytes after the head, then closes the connection if told to. */
const send = (head: readonly string[], body: string, cut = false): Promise<ReceivedBody> =>
  new Promise((resolve) => {
    settled = (received) => {
      socket.destroy();
      resolve(received);
    };
    const socket = connect(port, "127.0.0.1", () => {
      socket.write(["POST / HTTP/1.1", "Host: localhost", ...head, "", ""].join("\r\n"));
      socket.write(body, () => cut && socket.destroy());
    });
    socket.on("error", () => {});
  });

const length = (bytes: number) => `Content-Length: ${bytes}`;
const sha = (text: string) => `X-Content-Sha256: ${createHash("sha256").update(text).digest("hex")}`;

describe("the body of an upload", () => {
  it("comes whole", async () => {
    const received = await send([length(5), sha("hello")], "hello");
    expect(received.ok && new TextDecoder().decode(received.bytes)).toBe("hello");
  });

  it("is refused from its announced length, before a byte of it was sent", async () => {
    expect(await send([length(limit + 1)], "")).toMatchObject({ ok: false, status: 413 });
  });

  it("is refused where it grows too large without having said so", async () => {
    const body = `${(limit + 1).toString(16)}\r\n${"x".repeat(limit + 1)}\r\n0\r\n\r\n`;
    expect(await send(["Transfer-Encoding: chunked", sha("x")], body)).toMatchObject({
      ok: false,
      status: 413,
    });
  });

  it("that was cut on the way is noticed", async () => {
    const received = await send([length(500)], "time_s,101 [uV]\n0,1\n", true);
    expect(received).toMatchObject({
      ok: false,
      status: 400,
      message: expect.stringMatching(/cut on the way/),
    });
  });

  it("that is not what was hashed is noticed", async () => {
    expect(await send([length(5), sha("hallo")], "hello")).toMatchObject({ ok: false, status: 400 });
  });

  it("that neither says its length nor its hash is refused", async () => {
    expect(await send(["Transfer-Encoding: chunked"], "0\r\n\r\n")).toMatchObject({ ok: false, status: 411 });
  });
});

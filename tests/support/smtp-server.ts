import { createServer, type Socket } from "node:net";

export type SmtpServer = {
  readonly url: string;
  /** What was handed over, headers and body, in the order it came. */
  readonly messages: readonly string[];
  readonly commands: readonly string[];
  /** The next recipients are refused with this line, until it is set to undefined. */
  refusal: string | undefined;
  /** The next message is taken and never answered, until it is set to false. */
  hang: boolean;
  /** The next message with this text in it that is handed over from now on. */
  readonly next: (text?: string) => Promise<string>;
  readonly close: () => Promise<void>;
};

/** A mail server on loopback, as far as RFC 5321 is needed to take a message or to refuse it. */
export const startSmtpServer = async (): Promise<SmtpServer> => {
  const messages: string[] = [];
  const commands: string[] = [];
  const sockets = new Set<Socket>();
  const waiting = new Set<(message: string) => void>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.on("close", () => sockets.delete(socket)).on("error", () => {});
    const say = (line: string) => socket.write(`${line}\r\n`);
    let data: string | undefined;
    let rest = "";
    const command = (line: string) => {
      commands.push(line);
      const verb = line.slice(0, 4).toUpperCase();
      if (verb === "EHLO") say("250-loopback\r\n250 AUTH PLAIN");
      else if (verb === "AUTH") say("235 welcome");
      else if (verb === "RCPT") say(control.refusal ?? "250 recipient ok");
      else if (verb === "DATA") {
        data = "";
        say("354 end with a dot");
      } else if (verb === "QUIT") socket.end("221 bye\r\n");
      else say(verb === "MAIL" ? "250 ok" : "502 not here");
    };
    socket.on("data", (chunk) => {
      rest += chunk.toString("utf8");
      for (let end = rest.indexOf("\r\n"); end >= 0; end = rest.indexOf("\r\n")) {
        const line = rest.slice(0, end);
        rest = rest.slice(end + 2);
        if (data === undefined) command(line);
        else if (line !== ".") data += `${line.replace(/^\./, "")}\r\n`;
        else {
          messages.push(data);
          if (!control.hang) say("250 accepted as 17");
          for (const tell of waiting) tell(data);
          data = undefined;
        }
      }
    });
    say("220 loopback");
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as { port: number };
  const control: SmtpServer = {
    url: `smtp://127.0.0.1:${port}`,
    messages,
    commands,
    refusal: undefined,
    hang: false,
    next: (text = "") =>
      new Promise((resolve) => {
        const tell = (message: string) => {
          if (!message.includes(text)) return;
          waiting.delete(tell);
          resolve(message);
        };
        waiting.add(tell);
      }),
    close: async () => {
      for (const socket of sockets) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    },
  };
  return control;
};

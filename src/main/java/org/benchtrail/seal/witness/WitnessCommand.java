package org.benchtrail.seal.witness;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyPair;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.benchtrail.seal.KeyFile;

/** {@code witness DIR ...}: a witness for a shop that has none, with a folder and nothing else. */
public final class WitnessCommand {
    private static final String USAGE =
            "Use it so: witness DIR new NAME, witness DIR serve HOST PORT, or witness DIR once REQUEST ANSWER";
    private static final Pattern HEAD = Pattern.compile("/([0-9a-f]{64})/checkpoint");

    private WitnessCommand() {}

    /** A server that was started, and the port that it has. */
    public record Started(HttpServer server, int port) {}

    /** Answers with 0 if it did what it was asked; a witness that serves goes on doing so. */
    public static int run(List<String> words, PrintStream out) {
        try {
            if (words.size() == 3 && words.get(1).equals("new")) {
                out.println("Give this key to the logs: " + make(Path.of(words.get(0)), words.get(2)));
                return 0;
            }
            if (words.size() == 4 && words.get(1).equals("serve")) {
                Started started = serve(open(Path.of(words.get(0)), Clock.systemUTC()), words.get(2), words.get(3));
                out.println("The witness answers at http://" + words.get(2) + ":" + started.port() + "/");
                Thread.currentThread().join();
            }
            if (words.size() == 4 && words.get(1).equals("once")) {
                Witness.Answer answer = open(Path.of(words.get(0)), Clock.systemUTC())
                        .addCheckpoint(Files.readAllBytes(Path.of(words.get(2))));
                Files.writeString(Path.of(words.get(3)), answer.body(), StandardCharsets.UTF_8);
                out.println(answer.status());
                return answer.status() == 200 ? 0 : 1;
            }
            out.println(USAGE);
        } catch (IOException | KeyFile.Unusable | IllegalArgumentException e) {
            out.println(e.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return 1;
    }

    /** Makes the folder of a witness of that name; which logs it knows is put into its file {@code policy} by hand. */
    static VerifierKey make(Path folder, String name) throws IOException {
        KeyPair pair = KeyFile.make(folder.resolve("key"));
        VerifierKey key = new SigningKey(name, VerifierKey.WITNESS, pair).verifier();
        Files.writeString(folder.resolve("verifier-key"), key + "\n", StandardCharsets.UTF_8);
        Files.writeString(
                folder.resolve("policy"),
                "# one line for each log: log <verifier key>\nquorum none\n",
                StandardCharsets.UTF_8);
        return key;
    }

    static Witness open(Path folder, Clock clock) throws IOException, KeyFile.Unusable {
        String name = VerifierKey.parse(Files.readString(folder.resolve("verifier-key"), StandardCharsets.UTF_8)
                        .strip())
                .name();
        SigningKey key = new SigningKey(name, VerifierKey.WITNESS, KeyFile.read(folder.resolve("key")));
        WitnessPolicy policy = WitnessPolicy.parse(Files.readString(folder.resolve("policy"), StandardCharsets.UTF_8));
        return new Witness(
                folder,
                key,
                policy.logs().stream().map(WitnessPolicy.Party::key).toList(),
                clock);
    }

    static Started serve(Witness witness, String host, String port) throws IOException {
        HttpServer server = HttpServer.create(new InetSocketAddress(host, Integer.parseInt(port)), 0);
        server.createContext("/", exchange -> answer(witness, exchange));
        server.setExecutor(Executors.newFixedThreadPool(4));
        server.start();
        return new Started(server, server.getAddress().getPort());
    }

    private static void answer(Witness witness, HttpExchange exchange) throws IOException {
        try (exchange) {
            Witness.Answer answer = answered(witness, exchange);
            byte[] body = answer.body().getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().set("Content-Type", answer.type());
            if (answer.status() == 429) {
                exchange.getResponseHeaders().set("Retry-After", "10");
            }
            exchange.sendResponseHeaders(answer.status(), body.length);
            exchange.getResponseBody().write(body);
        }
    }

    private static Witness.Answer answered(Witness witness, HttpExchange exchange) throws IOException {
        String path = exchange.getRequestURI().getPath();
        Matcher head = HEAD.matcher(path);
        if (exchange.getRequestMethod().equals("GET") && head.matches()) {
            return witness.checkpoint(head.group(1));
        }
        if (!exchange.getRequestMethod().equals("POST") || !path.equals("/add-checkpoint")) {
            return Witness.Answer.plain(404, "Nothing is here.\n");
        }
        byte[] body = exchange.getRequestBody().readNBytes(SignedNote.LARGEST + 1);
        return body.length > SignedNote.LARGEST
                ? Witness.Answer.plain(413, "A request has at most 64 KiB.\n")
                : witness.addCheckpoint(body);
    }
}

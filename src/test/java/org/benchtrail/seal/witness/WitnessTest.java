package org.benchtrail.seal.witness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.benchtrail.core.integrity.AddCheckpoint;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.seal.KeyFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every answer of the witness by the protocol, and what a log cannot get signed. */
class WitnessTest {
    private static final SigningKey LOG = new SigningKey("log.shop.example/trail", VerifierKey.LOG, Keys.TEST_1);
    private static final List<Hash> LEAVES = IntStream.range(0, 20)
            .mapToObj(i -> Hash.ofLeaf(("leaf " + i).getBytes(StandardCharsets.UTF_8)))
            .toList();

    @TempDir
    Path folder;

    private Instant now = Instant.parse("2031-03-03T08:00:00Z");
    private VerifierKey key = LOG.verifier();
    private Witness witness = new Witness(folder, LOG, List.of(), Clock.systemUTC());

    @BeforeEach
    void made() throws IOException, KeyFile.Unusable {
        key = WitnessCommand.make(folder, "witness.example/w1");
        Files.writeString(folder.resolve("policy"), "log " + LOG.verifier() + "\nquorum none\n");
        witness = open();
    }

    /** As after a restart. */
    private Witness open() throws IOException, KeyFile.Unusable {
        return WitnessCommand.open(folder, new Clock() {
            @Override
            public ZoneOffset getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }

            @Override
            public Instant instant() {
                return now;
            }
        });
    }

    private static Checkpoint head(int size) {
        Frontier frontier = Frontier.empty();
        LEAVES.subList(0, size).forEach(frontier::add);
        return new Checkpoint("log.shop.example/trail", size, frontier.root());
    }

    private static AddCheckpoint request(int old, int size) {
        return request(old, old == 0 || old >= size ? List.of() : path(old, size), head(size));
    }

    private static List<Hash> path(int old, int size) {
        ByteArrayOutputStream tile = new ByteArrayOutputStream();
        LEAVES.subList(0, size).forEach(hash -> tile.writeBytes(hash.bytes()));
        return new TreeReader(size, path -> tile.toByteArray()).consistency(old);
    }

    private static AddCheckpoint request(int old, List<Hash> path, Checkpoint head) {
        return new AddCheckpoint(old, path, new SignedNote(head.text(), List.of(LOG.sign(head.text()))));
    }

    private Witness.Answer ask(AddCheckpoint request) throws IOException {
        return witness.addCheckpoint(request.toString().getBytes(StandardCharsets.UTF_8));
    }

    private Witness.Answer later(AddCheckpoint request) throws IOException {
        now = now.plus(Duration.ofSeconds(11));
        return ask(request);
    }

    @Test
    void aLogThatGrows_isSigned() throws Exception {
        for (int[] step : new int[][] {{0, 3}, {3, 7}, {7, 8}, {8, 20}}) {
            AddCheckpoint request = request(step[0], step[1]);
            Witness.Answer answer = later(request);
            assertEquals(200, answer.status(), answer.body());
            SignedNote signed = request.note()
                    .with(List.of(SignedNote.Line.parse(answer.body().strip())));
            assertEquals(List.of(key), signed.signers(List.of(key)));
            witness = open();
        }
        assertEquals(4, Files.readString(folder.resolve("history")).split("\nlog\\.shop|^log\\.shop").length - 1);
    }

    @Test
    void malformed_400() throws IOException {
        for (String body :
                List.of("", "old 0\n", "old x\n\n", "old 00\n\n" + request(0, 3).note())) {
            assertEquals(
                    400,
                    witness.addCheckpoint(body.getBytes(StandardCharsets.UTF_8)).status(),
                    body);
        }
        assertEquals(400, ask(request(5, 3)).status());
    }

    @Test
    void unknownOrigin_404_andForeignSignature_403() throws IOException {
        Checkpoint other = new Checkpoint("other.example/log", 3, head(3).root());
        assertEquals(404, ask(request(0, List.of(), other)).status());
        String text = head(3).text();
        SigningKey foreign = new SigningKey("log.shop.example/trail", VerifierKey.LOG, Keys.TEST_3);
        assertEquals(
                403,
                ask(new AddCheckpoint(0, List.of(), new SignedNote(text, List.of(foreign.sign(text)))))
                        .status());
        SignedNote spoilt = new SignedNote(text, List.of(LOG.sign("another text\n")));
        assertEquals(403, ask(new AddCheckpoint(0, List.of(), spoilt)).status());
    }

    @Test
    void anotherSize_409_withTheSizeItStandsAt() throws IOException {
        assertEquals(200, ask(request(0, 8)).status());
        for (int old : new int[] {0, 3, 9}) {
            Witness.Answer answer = later(request(old, 9));
            assertEquals(409, answer.status());
            assertEquals("8\n", answer.body());
            assertEquals("text/x.tlog.size", answer.type());
        }
        assertEquals(409, later(request(3, 3)).status(), "never back");
    }

    @Test
    void whatIsNotProven_422() throws IOException {
        assertEquals(422, ask(request(0, path(3, 8), head(8))).status(), "a path from nothing");
        assertEquals(
                422,
                ask(request(0, List.of(), new Checkpoint("log.shop.example/trail", 0, head(3).root())))
                        .status());
        assertEquals(200, ask(request(0, 8)).status());
        assertEquals(422, later(request(8, List.of(), head(9))).status());
        assertEquals(
                422,
                later(request(8, path(8, 9), new Checkpoint("log.shop.example/trail", 9, head(8).root())))
                        .status());
        assertEquals(
                422,
                later(request(8, List.of(), new Checkpoint("log.shop.example/trail", 8, head(7).root())))
                        .status());
        assertEquals(422, later(request(8, path(7, 9), head(9))).status());
        assertEquals(200, later(request(8, 9)).status());
    }

    /** Who asks again gets the same signature; who asks for another head within ten seconds waits. */
    @Test
    void theSameSize_isAnsweredAlike_andAnotherOneTooSoon_429() throws IOException {
        String first = ask(request(0, 3)).body();
        now = now.plus(Duration.ofSeconds(5));
        assertEquals(first, ask(request(3, 3)).body());
        assertEquals(429, ask(request(3, 4)).status());
        now = now.plus(Duration.ofSeconds(5));
        assertEquals(200, ask(request(3, 4)).status());
    }

    @Test
    void overHttp_andByAFileThatIsCarried() throws Exception {
        WitnessCommand.Started started = WitnessCommand.serve(witness, "127.0.0.1", "0");
        try {
            String address = "http://127.0.0.1:" + started.port();
            HttpResponse<String> signed = send(HttpRequest.newBuilder(URI.create(address + "/add-checkpoint"))
                    .POST(HttpRequest.BodyPublishers.ofString(request(0, 3).toString()))
                    .build());
            assertEquals(200, signed.statusCode());
            String origin = Hash.sha256("log.shop.example/trail".getBytes(StandardCharsets.UTF_8))
                    .hex();
            HttpResponse<String> kept = send(HttpRequest.newBuilder(URI.create(address + "/" + origin + "/checkpoint"))
                    .build());
            assertTrue(kept.body().endsWith(signed.body()), kept.body());
            HttpResponse<String> tooLarge = send(HttpRequest.newBuilder(URI.create(address + "/add-checkpoint"))
                    .POST(HttpRequest.BodyPublishers.ofString("x".repeat(70_000)))
                    .build());
            assertEquals(413, tooLarge.statusCode());
            assertEquals(
                    404,
                    send(HttpRequest.newBuilder(URI.create(address + "/")).build())
                            .statusCode());
        } finally {
            started.server().stop(0);
        }
        Path asked = Files.writeString(folder.resolve("asked"), request(3, 3).toString());
        Path answer = folder.resolve("answer");
        PrintStream out = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        assertEquals(
                0, WitnessCommand.run(List.of(folder.toString(), "once", asked.toString(), answer.toString()), out));
        assertTrue(Files.readString(answer).startsWith("\u2014 witness.example/w1 "));
        assertEquals(1, WitnessCommand.run(List.of(folder.toString()), out));
    }

    private static HttpResponse<String> post(int port, AddCheckpoint request) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/add-checkpoint"))
                .POST(HttpRequest.BodyPublishers.ofString(request.toString()))
                .build());
    }

    /** Every refusal as a log gets it, with what the protocol says of its type and of when to come again. */
    @Test
    void refusals_overHttp() throws Exception {
        WitnessCommand.Started started = WitnessCommand.serve(witness, "127.0.0.1", "0");
        try {
            int port = started.port();
            String text = head(3).text();
            SigningKey foreign = new SigningKey("log.shop.example/trail", VerifierKey.LOG, Keys.TEST_3);
            assertEquals(
                    403,
                    post(port, new AddCheckpoint(0, List.of(), new SignedNote(text, List.of(foreign.sign(text)))))
                            .statusCode());
            Checkpoint other = new Checkpoint("other.example/log", 3, head(3).root());
            assertEquals(404, post(port, request(0, List.of(), other)).statusCode());
            assertEquals(400, post(port, request(5, 3)).statusCode());
            assertEquals(200, post(port, request(0, 8)).statusCode());
            HttpResponse<String> size = post(port, request(3, 9));
            assertEquals(409, size.statusCode());
            assertEquals("8\n", size.body());
            assertEquals(
                    "text/x.tlog.size",
                    size.headers().firstValue("Content-Type").orElseThrow());
            HttpResponse<String> soon = post(port, request(8, 9));
            assertEquals(429, soon.statusCode());
            assertEquals("10", soon.headers().firstValue("Retry-After").orElseThrow());
            now = now.plus(Duration.ofSeconds(11));
            HttpResponse<String> unproven = post(port, request(8, path(3, 9), head(9)));
            assertEquals(422, unproven.statusCode());
            assertTrue(unproven.headers().firstValue("Retry-After").isEmpty());
            assertEquals(200, post(port, request(8, 9)).statusCode());
        } finally {
            started.server().stop(0);
        }
    }

    /** Of many at once that start from the same size one is signed, and the record never goes back. */
    @Test
    void manyAtOnce_areAnsweredOneAfterTheOther() throws Exception {
        assertEquals(200, ask(request(0, 1)).status());
        WitnessCommand.Started started = WitnessCommand.serve(witness, "127.0.0.1", "0");
        try {
            for (int from = 1; from < 16; from = kept()) {
                now = now.plus(Duration.ofSeconds(11));
                int old = from;
                List<CompletableFuture<Integer>> answers = IntStream.rangeClosed(old + 1, Math.min(20, old + 4))
                        .mapToObj(
                                size -> CompletableFuture.supplyAsync(() -> status(started.port(), request(old, size))))
                        .toList();
                List<Integer> statuses =
                        answers.stream().map(CompletableFuture::join).sorted().toList();
                assertEquals(200, statuses.get(0), statuses::toString);
                assertTrue(statuses.stream().skip(1).allMatch(status -> status == 409), () -> "one alone: " + statuses);
                assertTrue(kept() > old, "it goes on");
            }
            long signed = Files.readString(folder.resolve("history"))
                    .lines()
                    .filter(line -> line.startsWith("\u2014 witness.example/w1 "))
                    .count();
            assertTrue(signed >= 4, signed + " were signed");
        } finally {
            started.server().stop(0);
        }
    }

    private static int status(int port, AddCheckpoint request) {
        try {
            return post(port, request).statusCode();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** The size of the head that it serves. */
    private int kept() throws IOException {
        String origin = Hash.sha256("log.shop.example/trail".getBytes(StandardCharsets.UTF_8))
                .hex();
        return (int) Checkpoint.parse(
                        SignedNote.parse(witness.checkpoint(origin).body()).text())
                .size();
    }

    private static HttpResponse<String> send(HttpRequest request) throws IOException, InterruptedException {
        return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
    }
}

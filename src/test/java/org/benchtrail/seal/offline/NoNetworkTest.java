package org.benchtrail.seal.offline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.BesideOthers;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verifier opens no socket: in a process that ends at the first, and where the system lets us, in one without a network. */
@BesideOthers
class NoNetworkTest {
    private static final String TICKET = "40718-6";

    @TempDir
    Path own;

    private Path trail = Path.of("");
    private Path log = Path.of("");
    private Path policy = Path.of("");
    private String typed = "";

    private static SmallExport small() {
        return new SmallExport().site("keys", "first").entry(TICKET, "opened").entry(TICKET, "advanced");
    }

    @BeforeEach
    void exports() throws IOException {
        trail = Files.writeString(own.resolve("trail.jsonl"), small().trail(TICKET, 2));
        log = Files.createDirectory(own.resolve("log"));
        small().write(log, true);
        policy = Files.writeString(own.resolve("policy"), SmallExport.POLICY);
        typed = "3:" + small().head(3).root().base64();
    }

    private int ends(List<String> before, String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(before);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-Djava.nio.channels.spi.SelectorProvider=" + NoNetwork.Refusing.class.getName());
        command.add("-cp");
        command.add(System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
        command.add(NoNetwork.class.getName());
        command.addAll(List.of(words));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(own.resolve("said").toFile())
                .start();
        return process.waitFor();
    }

    private void verifies(List<String> before) throws IOException, InterruptedException {
        assertEquals(0, ends(before, "verify", trail.toString(), "--earlier", typed), this::said);
        assertEquals(
                0,
                ends(before, "verify", log.toString(), "--policy", policy.toString(), "--earlier", typed),
                this::said);
        assertEquals(2, ends(before, "verify", trail.toString()), this::said);
        assertEquals(1, ends(before, "verify", trail.toString(), "--earlier", "3:" + "A".repeat(43) + "="), this::said);
        assertEquals(3, ends(before, "verify", own.resolve("none").toString()), this::said);
    }

    private String said() {
        try {
            return Files.readString(own.resolve("said"), StandardCharsets.UTF_8);
        } catch (IOException e) {
            return e.toString();
        }
    }

    @Test
    void verify_asksForNoSocket() throws Exception {
        for (String what : List.of("socket", "channel")) {
            assertEquals(NoNetwork.OPENED, ends(List.of(), what), this::said);
            assertTrue(said().contains("a socket was asked for"), this::said);
        }
        verifies(List.of());
    }

    @Test
    void verify_needsNoNetwork() throws Exception {
        List<String> apart = List.of("unshare", "--net", "--map-root-user");
        if (!canRun(apart)) {
            System.out.println(
                    "NoNetworkTest: not tried without a network: the system gives a process none of its own (unshare --net)");
            return;
        }
        verifies(apart);
    }

    private static boolean canRun(List<String> apart) throws InterruptedException {
        List<String> nothing = new ArrayList<>(apart);
        nothing.add("true");
        try {
            return new ProcessBuilder(nothing).start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        }
    }
}

package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.GrownTree;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.MerkleProofs;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.junit.jupiter.api.Test;

/**
 * The node that seals is killed again and again while another takes acts, and what it leaves is looked at each time: no leaf is there
 * twice, none is lost, and all notes that it ever signed are of one log. A few times in every build, often by hand:
 *
 * <pre>mvn -o verify -Dit.test=SealKillIT -Dseal.kills=200</pre>
 *
 * <p>Most of that time are starts. {@code -Dbenchtrail.launch="-XX:SharedArchiveFile=... -cp ... org.benchtrail.Benchtrail"} starts the
 * same classes from an archive; {@code -Dseal.minutes} ends it sooner, with as many kills as it had.
 */
class SealKillIT {
    private static final int KILLS = Integer.getInteger("seal.kills", 3);
    private static final long SEED = Long.getLong("seal.seed", 40718);
    private static final int START_SECONDS = Integer.getInteger("start.seconds", 120);

    /** All of the folder holds, and nobody outside vouches for it. */
    private static final int NOBODY_OUTSIDE = 2;

    private static final int LATEST_MS = 1500;
    private static final long MINUTES = Long.getLong("seal.minutes", 600);

    /** Where in a round a kill fell, by what it left. */
    private enum Left {
        /** Signed, and written beside the key, but not published: the transaction never ended. */
        SIGNED_AND_NOT_PUBLISHED,
        /** Leaves without a head over them. */
        SEALED_AND_NOT_SIGNED,
        /** A head that the folder does not have, with or without its tiles. */
        PUBLISHED_AND_NOT_IN_THE_FOLDER,
        /** Between two rounds, or in a transaction that left nothing. */
        NOTHING_HALF_DONE
    }

    private final Map<Left, Integer> left = new EnumMap<>(Left.class);
    private final Map<Long, Set<String>> signed = new TreeMap<>();
    private final Random random = new Random(SEED);
    private Path sealer = Path.of("");
    private int partial;
    private int killed;
    private long longestQueue;

    private Path lastNote() {
        return sealer.resolve("log.key.last");
    }

    private Path folder() {
        return sealer.resolve("log");
    }

    @Test
    void sealerKilled_underLoad_noLeafTwice_noneLost_andAllNotesAreOfOneLog() throws Exception {
        sealer = PackagedJar.folder("seal-kill-sealer");
        Path acting = PackagedJar.folder("seal-kill-acting");
        try (ShopDatabase database = new ShopDatabase("seal-kill")) {
            Map<String, String> environment = database.environment();
            environment.put("BENCHTRAIL_DATA", acting.toString());
            try (RunningServer server = RunningServer.start(
                            acting, environment, List.of("benchtrail.demo=true", "benchtrail.seal.every=PT0S"));
                    Load load = new Load(Load.token(server), 2)) {
                load.calm();
                load.start();
                long end = System.nanoTime() + MINUTES * 60_000_000_000L;
                while (killed < KILLS && System.nanoTime() < end) {
                    killOnce(database, load);
                    killed++;
                    if (killed % 20 == 0) {
                        System.out.println(killed + " kills: " + left);
                    }
                    load.requireGoingOn();
                }
                load.close();
                assertEquals(0, load.again(), "the server that acts was left in peace");
                int kept = drain(database);
                tell(database, load, kept);
                load.requireSealed(database);
            }
            requireEveryLeafOnce(database);
            requireOneLog(database);
            PackagedJar.Ended verified = PackagedJar.run(Map.of(), List.of(), "verify", folder().toString());
            assertEquals(NOBODY_OUTSIDE, verified.code(), verified.said());
        }
    }

    /** Starts a node that seals without a rest, and kills it some time after its first leaves. */
    private void killOnce(ShopDatabase database, Load load) throws Exception {
        load.calm();
        long before = size(database);
        Process process = start(database);
        try {
            waitUntilLarger(database, before, process);
            load.hurry();
            Thread.sleep(random.nextInt(LATEST_MS));
        } finally {
            process.destroyForcibly().waitFor();
        }
        keepNotes(database);
        look(database);
    }

    private Process start(ShopDatabase database) throws IOException {
        Map<String, String> environment = new HashMap<>(database.environment());
        environment.put("BENCHTRAIL_DATA", sealer.toString());
        // what migrates is not what serves
        environment.remove("BENCHTRAIL_OWNER_USER");
        environment.remove("BENCHTRAIL_OWNER_PASSWORD");
        return PackagedJar.start(
                environment,
                List.of(
                        "benchtrail.demo=false",
                        "quarkus.http.port=0",
                        "quarkus.management.port=0",
                        "benchtrail.seal.every=PT0.001S",
                        "benchtrail.seal.key-file=" + sealer.resolve("log.key"),
                        "benchtrail.seal.folder=" + folder()),
                sealer.resolve("said.log"));
    }

    private static long size(ShopDatabase database) throws SQLException {
        return Long.parseLong(database.rows("select size from seal_head").get(0).get(0));
    }

    private void waitUntilLarger(ShopDatabase database, long before, Process process) throws Exception {
        long end = System.nanoTime() + START_SECONDS * 1_000_000_000L;
        while (size(database) <= before) {
            assertTrue(process.isAlive() && System.nanoTime() < end, () -> "nothing was sealed:\n" + said());
            Thread.sleep(20);
        }
    }

    private String said() {
        try {
            return Files.readString(sealer.resolve("said.log"), StandardCharsets.UTF_8);
        } catch (IOException e) {
            return e.toString();
        }
    }

    /** Every note that there is: what was published, what stands beside the key, and what the folder says. */
    private void keepNotes(ShopDatabase database) throws Exception {
        database.rows("select note from checkpoint").forEach(row -> keep(row.get(0)));
        for (Path file : List.of(lastNote(), folder().resolve("checkpoint"))) {
            if (Files.exists(file)) {
                keep(Files.readString(file, StandardCharsets.UTF_8));
            }
        }
    }

    private void keep(String note) {
        signed.computeIfAbsent(head(note).size(), s -> new HashSet<>()).add(note);
    }

    private static Checkpoint head(String note) {
        return Checkpoint.parse(SignedNote.parse(note).text());
    }

    private static long headOf(Path file) throws IOException {
        return Files.exists(file)
                ? head(Files.readString(file, StandardCharsets.UTF_8)).size()
                : 0;
    }

    private void look(ShopDatabase database) throws Exception {
        long published = Long.parseLong(database.rows("select coalesce(max(size), 0) from checkpoint")
                .get(0)
                .get(0));
        Left how = headOf(lastNote()) > published
                ? Left.SIGNED_AND_NOT_PUBLISHED
                : size(database) > published
                        ? Left.SEALED_AND_NOT_SIGNED
                        : headOf(folder().resolve("checkpoint")) < published
                                ? Left.PUBLISHED_AND_NOT_IN_THE_FOLDER
                                : Left.NOTHING_HALF_DONE;
        left.merge(how, 1, Integer::sum);
        longestQueue = Math.max(longestQueue, database.count("seal_queue"));
        try (Stream<Path> files = Files.walk(sealer)) {
            partial += files.anyMatch(f -> f.toString().endsWith(".partial-file")) ? 1 : 0;
        }
    }

    /** Lets one node seal the rest in peace; answers with how many notes there are in all. */
    private int drain(ShopDatabase database) throws Exception {
        Process process = start(database);
        long end = System.nanoTime() + START_SECONDS * 1_000_000_000L;
        while (database.count("seal_queue") > 0
                || headOf(lastNote()) < size(database)
                || headOf(folder().resolve("checkpoint")) < size(database)) {
            assertTrue(process.isAlive() && System.nanoTime() < end, () -> "the rest was not sealed:\n" + said());
            Thread.sleep(200);
        }
        process.destroy();
        process.waitFor();
        keepNotes(database);
        return signed.values().stream().mapToInt(Set::size).sum();
    }

    private void tell(ShopDatabase database, Load load, int kept) throws SQLException {
        System.out.printf(
                "seed %d: the sealer was killed %d times while %d acts were acknowledged; %d leaves, %d notes of %d sizes;"
                        + " longest queue %d; where the kills fell: %s; %d times a file was half written%n",
                SEED, killed, load.size(), size(database), kept, signed.size(), longestQueue, left, partial);
    }

    private static void requireEveryLeafOnce(ShopDatabase database) throws SQLException {
        String entries =
                "select 'ticket/' || ticket_number(ticket) as stream, cast(entry as bigint) as place, hash from trail_entry"
                        + " union all select stream, place, hash from site_record";
        String leaves = "select stream, place, encode(hash, 'hex') as hash from seal_leaf where stream <> 'files'";
        assertEquals(List.of(), database.rows("(" + entries + ") except all " + leaves), "none is lost");
        assertEquals(List.of(), database.rows(leaves + " except all (" + entries + ")"), "none is there twice");
        assertEquals(0, database.count("seal_queue"));
        assertEquals(0, database.count("seal_stuck"));
        assertEquals(List.of(), database.rows("select stream from site_record where stream = 'incidents'"));
    }

    /** Every note is by the one key, and each is proven to go on from the one before it. */
    private void requireOneLog(ShopDatabase database) throws SQLException {
        VerifierKey key =
                VerifierKey.parse(database.rows("select convert_from(canonical, 'UTF8')::json -> 'content' ->> 'key'"
                                + " from site_record where stream = 'keys'")
                        .get(0)
                        .get(0));
        GrownTree tree = new GrownTree();
        Map<Long, Hash> roots = new HashMap<>();
        List<List<String>> leaves =
                database.rows("select index, stream, place, encode(hash, 'hex') from seal_leaf order by index");
        for (int i = 0; i < leaves.size(); i++) {
            List<String> leaf = leaves.get(i);
            assertEquals(i, Long.parseLong(leaf.get(0)), "no number is left out, none is there twice");
            tree.add(new Leaf(leaf.get(1), Long.parseLong(leaf.get(2)), Hash.ofHex(leaf.get(3))).bytes());
            if (signed.containsKey(i + 1L)) {
                roots.put(i + 1L, tree.root());
            }
        }
        List<Checkpoint> line = new ArrayList<>();
        signed.values()
                .forEach(notes -> notes.forEach(note -> {
                    assertEquals(List.of(key), SignedNote.parse(note).signers(List.of(key)));
                    line.add(head(note));
                }));
        assertFalse(line.isEmpty());
        for (int i = 0; i < line.size(); i++) {
            Checkpoint head = line.get(i);
            assertEquals(roots.get(head.size()), head.root(), "at " + head.size());
            if (i > 0) {
                Checkpoint before = line.get(i - 1);
                assertTrue(
                        MerkleProofs.extendsTree(
                                before.size(),
                                before.root(),
                                head.size(),
                                head.root(),
                                tree.at(head.size()).consistency(before.size())),
                        () -> before + " and " + head + " are of two logs");
            }
        }
    }
}

package org.benchtrail.seal.offline;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.EntryBundle;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TilePath;
import org.benchtrail.platform.LongWork;

/** Verifies a whole exported log: signatures, every leaf, every tile, an earlier head, every stream, and the records if they are there. */
final class FolderVerifier {
    private final VerifyArguments asked;
    private final VerifyReport report = new VerifyReport();
    private final Map<Integer, List<Hash>> levels = new HashMap<>();
    private final Frontier frontier =
            new Frontier(0, List.of(), (level, n, hash) -> level(level).add(hash));
    private final RecordVerifier records;
    private final LongWork progress;

    FolderVerifier(VerifyArguments asked, LongWork progress) {
        this.asked = asked;
        this.progress = progress;
        records = new RecordVerifier(asked.export(), report);
    }

    private List<Hash> level(int level) {
        return levels.computeIfAbsent(level, l -> new ArrayList<>());
    }

    VerifyReport verify() throws IOException {
        Path file = asked.export().resolve("checkpoint");
        SignedNote note;
        Checkpoint head;
        try {
            note = SignedNote.parse(Files.readAllBytes(file));
            head = Checkpoint.parse(note.text());
        } catch (IOException | IllegalArgumentException e) {
            report.noExport(file + " is no checkpoint.");
            return report;
        }
        report.tell("Head: " + head.origin() + ", " + head.size() + " leaves, root "
                + head.root().base64() + ".");
        HeadSignatures.look(note, head, asked.policy(), report);
        ExportedStamps stamps = ExportedStamps.in(asked.export());
        leaves(head, stamps);
        if (frontier.size() == head.size() && !frontier.root().equals(head.root())) {
            report.found("root", "checkpoint", "the leaves have another root than the head");
        }
        earlier(head);
        tiles(head.size());
        records.end();
        stamps.tell(asked.roots(), report);
        return report;
    }

    private void leaves(Checkpoint head, ExportedStamps stamps) throws IOException {
        long size = head.size();
        for (long n = 0; n * TilePath.FULL < size; n++) {
            TilePath path = TilePath.of(TilePath.ENTRIES, n, size);
            List<Leaf> leaves = Bundles.read(asked.export(), path, report);
            if (leaves.isEmpty()) {
                return;
            }
            records.open(path);
            for (Leaf leaf : leaves) {
                Hash hash = leaf.leafHash();
                level(0).add(hash);
                frontier.add(hash);
                records.next(leaf);
                report.earlier(frontier, asked.earlier());
                if (stamps.isOf(frontier.size())) {
                    stamps.head(new Checkpoint(head.origin(), frontier.size(), frontier.root()));
                }
            }
            progress.at(frontier.size(), size, "leaves");
        }
    }

    private void earlier(Checkpoint head) {
        VerifyArguments.Head earlier = asked.earlier();
        if (earlier != null && earlier.size() > frontier.size()) {
            report.found(
                    "earlier head",
                    "checkpoint",
                    "has " + head.size() + " leaves, and the head that you hold has " + earlier.size());
        }
    }

    /**
     * Every file below {@code tile} has to be what the leaves make of it. What a writer had begun when it was killed is no part of
     * the log: no reader asks for it.
     */
    private void tiles(long size) throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(asked.export().resolve("tile"))) {
            files = all.filter(Files::isRegularFile)
                    .filter(f -> !f.toString().endsWith(ExportedRecords.HALF_WRITTEN))
                    .sorted()
                    .toList();
        }
        int ahead = 0;
        for (Path file : files) {
            String name = asked.export().relativize(file).toString().replace('\\', '/');
            Optional<TilePath> path = TilePath.parse(name);
            if (path.isPresent() && !path.get().isWithin(size) && goesOn(path.get(), Files.readAllBytes(file))) {
                ahead++;
            } else if (path.isEmpty() || !path.get().isWithin(size)) {
                report.found("tile", name, "is nothing that a log of " + size + " leaves has");
            } else if (path.get().level() != TilePath.ENTRIES
                    && !Arrays.equals(Files.readAllBytes(file), expected(path.get()))) {
                report.found("tile", name, "is not what the leaves make of it");
            }
        }
        if (ahead > 0) {
            report.tell(ahead
                    + " tiles go on after the head: whoever writes the folder was stopped before the next head, or an"
                    + " older head was put in its place.");
        }
    }

    /** Whether a tile of a larger log begins with the hashes of this one. */
    private boolean goesOn(TilePath path, byte[] tile) {
        byte[] found = path.level() == TilePath.ENTRIES ? hashes(tile) : tile;
        byte[] here = expected(path.level() == TilePath.ENTRIES ? new TilePath(0, path.n(), path.width()) : path);
        return found.length == path.width() * Hash.BYTES && Arrays.equals(here, Arrays.copyOf(found, here.length));
    }

    private static byte[] hashes(byte[] bundle) {
        ByteArrayOutputStream hashes = new ByteArrayOutputStream();
        try {
            EntryBundle.read(bundle)
                    .forEach(leaf -> hashes.writeBytes(leaf.leafHash().bytes()));
        } catch (IllegalArgumentException notLeaves) {
            return new byte[0];
        }
        return hashes.toByteArray();
    }

    private byte[] expected(TilePath path) {
        List<Hash> hashes = level(path.level());
        int from = (int) (path.n() * TilePath.FULL);
        ByteArrayOutputStream tile = new ByteArrayOutputStream();
        hashes.subList(Math.min(from, hashes.size()), Math.min(from + path.width(), hashes.size()))
                .forEach(hash -> tile.writeBytes(hash.bytes()));
        return tile.toByteArray();
    }
}

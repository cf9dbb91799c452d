package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.EntryBundle;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TilePath;
import org.benchtrail.platform.LongWork;
import org.benchtrail.seal.offline.ExportedRecords;
import org.benchtrail.seal.offline.ExportedStamps;

/** The log as files: what the server serves under {@code /log}, byte for byte, for another disk or machine. */
@ApplicationScoped
class LogFolder {
    static final String CHECKPOINT = "checkpoint";

    private final LogRows rows;
    private final StoredLeaves stored;
    private final TimeStampRows stamps;
    private final SealConfig config;

    LogFolder(LogRows rows, StoredLeaves stored, TimeStampRows stamps, SealConfig config) {
        this.rows = rows;
        this.stamps = stamps;
        this.stored = stored;
        this.config = config;
    }

    /** Writes what came since the checkpoint that the folder of the settings holds; nothing if they name none. */
    void write() throws IOException {
        Optional<Path> folder = config.folder();
        if (folder.isPresent()) {
            write(folder.get(), false);
        }
    }

    /**
     * Writes what is new. The tiles first, and the checkpoint last: whoever reads the folder finds all that its checkpoint speaks of.
     *
     * @param withRecords whether what the leaves seal is written as well, beside the tiles: a line for each leaf
     */
    void write(Path folder, boolean withRecords) throws IOException {
        write(folder, withRecords, new LongWork(line -> {}));
    }

    /** As {@link #write(Path, boolean)} with records, to somebody who waits for it. */
    void export(Path folder, LongWork progress) throws IOException {
        write(folder, true, progress);
    }

    private void write(Path folder, boolean withRecords, LongWork progress) throws IOException {
        Optional<SignedNote> note = QuarkusTransaction.requiringNew().call(rows::newestNote);
        Path checkpoint = folder.resolve(CHECKPOINT);
        if (note.isPresent()) {
            stamp(folder, Checkpoint.parse(note.get().text()).size());
        }
        if (note.isEmpty()
                || (Files.exists(checkpoint)
                        && Arrays.equals(
                                Files.readAllBytes(checkpoint), note.get().bytes()))) {
            return;
        }
        long from = Files.exists(checkpoint)
                ? Checkpoint.parse(
                                SignedNote.parse(Files.readAllBytes(checkpoint)).text())
                        .size()
                : 0;
        long size = Checkpoint.parse(note.get().text()).size();
        for (int level = TilePath.ENTRIES; TilePath.hashes(level, size) > 0; level++) {
            for (long n = TilePath.hashes(level, from) / TilePath.FULL;
                    n * TilePath.FULL < TilePath.hashes(level, size);
                    n++) {
                TilePath path = TilePath.of(level, n, size);
                put(
                        folder.resolve(path.toString()),
                        QuarkusTransaction.requiringNew().call(() -> content(path)));
                if (withRecords && level == TilePath.ENTRIES) {
                    put(
                            folder.resolve(ExportedRecords.name(path)),
                            QuarkusTransaction.requiringNew().call(() -> records(path)));
                    progress.at(n * TilePath.FULL + path.width(), size, "leaves");
                }
            }
        }
        put(checkpoint, note.get().bytes());
    }

    /** The newest time-stamp of a head that this one contains. */
    private void stamp(Path folder, long size) throws IOException {
        Optional<TimeStampRows.Stamped> newest =
                QuarkusTransaction.requiringNew().call(() -> stamps.newest(size));
        if (newest.isPresent()) {
            Path file = folder.resolve(ExportedStamps.name(newest.get().size()));
            if (!Files.exists(file)) {
                put(file, newest.get().answer());
            }
        }
    }

    private byte[] records(TilePath path) {
        long from = path.n() * TilePath.FULL;
        ByteArrayOutputStream lines = new ByteArrayOutputStream();
        stored.between(from, from + path.width()).forEach(leaf -> {
            lines.writeBytes(leaf.canonical());
            lines.write('\n');
        });
        return lines.toByteArray();
    }

    /** The bytes of a tile, or of the leaves below one. */
    byte[] content(TilePath path) {
        long from = path.n() * TilePath.FULL;
        return path.level() == TilePath.ENTRIES
                ? EntryBundle.write(rows.leaves(from, from + path.width()))
                : rows.read(path);
    }

    private static void put(Path file, byte[] content) throws IOException {
        Path parent = file.toAbsolutePath().getParent();
        if (parent != null) {
            Files.createDirectories(parent);
        }
        Path partial = file.resolveSibling(file.getFileName() + ExportedRecords.HALF_WRITTEN);
        try (FileChannel channel = FileChannel.open(
                partial, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
            channel.write(ByteBuffer.wrap(content));
            channel.force(true);
        }
        Files.move(partial, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}

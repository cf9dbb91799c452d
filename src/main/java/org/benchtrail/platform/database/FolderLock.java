package org.benchtrail.platform.database;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.nio.file.StandardOpenOption.CREATE;
import static java.nio.file.StandardOpenOption.READ;
import static java.nio.file.StandardOpenOption.WRITE;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Held by the one process that uses a data folder; the system lets go of it when the process ends, however it ends. So a
 * PostgreSQL that runs while nobody holds the lock is an orphan.
 */
final class FolderLock implements AutoCloseable {
    /** Far behind the content, so that the process id can be read where locks forbid reading (Windows). */
    private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;

    private final Path file;
    private final FileChannel channel;
    private boolean held = true;

    private FolderLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /** @throws DatabaseNotStarted if this or another process holds the folder */
    static FolderLock take(DataFolder folder) throws IOException {
        Path file = folder.lockFile();
        // POSIX drops a process's locks on a file as soon as it closes any channel on that file, so a second attempt in
        // the same process must not even open it. System properties are seen by every class loader of the process.
        String own = Long.toString(ProcessHandle.current().pid());
        if (System.getProperties().putIfAbsent(key(file), own) != null) {
            throw inUse(folder, own);
        }
        FolderLock lock = null;
        try {
            lock = lockFile(file);
        } finally {
            if (lock == null) {
                System.getProperties().remove(key(file));
            }
        }
        if (lock == null) {
            throw inUse(folder, Files.readString(file).strip());
        }
        return lock;
    }

    @Override
    public synchronized void close() throws IOException {
        if (held) {
            held = false;
            channel.close();
            System.getProperties().remove(key(file));
        }
    }

    private static @Nullable FolderLock lockFile(Path file) throws IOException {
        if (!Files.exists(file)) {
            OwnerOnly.createEmpty(file);
        }
        FileChannel channel = FileChannel.open(file, CREATE, READ, WRITE);
        boolean taken = false;
        try {
            FileLock granted = channel.tryLock(LOCKED_BYTE, 1, false);
            taken = granted != null;
            if (taken) {
                channel.truncate(0);
                channel.write(UTF_8.encode(ProcessHandle.current().pid() + "\n"));
            }
        } finally {
            if (!taken) {
                channel.close();
            }
        }
        return taken ? new FolderLock(file, channel) : null;
    }

    private static String key(Path file) {
        return "benchtrail.held." + file;
    }

    private static DatabaseNotStarted inUse(DataFolder folder, String pid) {
        String who = pid.isEmpty() ? "" : " (process " + pid + ")";
        return new DatabaseNotStarted("A running Benchtrail" + who + " uses the data folder " + folder.path()
                + ". Use that one, stop it first, or give this one another data folder.");
    }
}

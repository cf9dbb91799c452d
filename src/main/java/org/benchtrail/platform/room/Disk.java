package org.benchtrail.platform.room;

import jakarta.inject.Named;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.benchtrail.platform.NoRoom;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** The disk on which this server keeps what it writes: its own database if it has one, and files while they are sent. */
@Singleton
@Named("disk")
public class Disk {
    private static final long LOOK_NS = TimeUnit.SECONDS.toNanos(10);

    private final Path folder;
    private volatile long looked = System.nanoTime() - LOOK_NS;
    private volatile long free;
    private volatile long total;

    Disk(@ConfigProperty(name = "benchtrail.data-folder", defaultValue = ".") String folder) {
        this.folder = Path.of(folder).toAbsolutePath();
    }

    /** Looked at again after ten seconds. */
    public Room room() {
        if (System.nanoTime() - looked >= LOOK_NS) {
            look();
        }
        return Room.of(free, total);
    }

    /** Of what an administrator is told on every page; empty while there is enough. */
    public String banner() {
        return switch (room()) {
            case ENOUGH -> "";
            case LITTLE -> "The disk has " + left() + " left. Make room before nothing can be recorded.";
            case HARDLY_ANY ->
                "The disk has only " + left()
                        + " left: files are refused, and soon nothing can be recorded. Make room now.";
        };
    }

    /** @throws NoRoom if there is hardly any room left */
    public void requireRoomForFiles() {
        if (room() == Room.HARDLY_ANY) {
            throw new NoRoom();
        }
    }

    /** The share that is left, as text. */
    String left() {
        return total <= 0 ? "an unknown share" : String.format(Locale.ROOT, "%.1f %%", 100.0 * free / total);
    }

    private void look() {
        try {
            FileStore store = Files.getFileStore(folder);
            free = store.getUsableSpace();
            total = store.getTotalSpace();
        } catch (IOException cannotBeLookedAt) {
            total = 0;
        }
        looked = System.nanoTime();
    }
}

package org.benchtrail.packaged;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A file system of its own in a file, small enough to be filled. */
final class SmallDisk implements AutoCloseable {
    private static final int MEGABYTES = 1500;

    private final Path place;

    private SmallDisk(Path place) {
        this.place = place;
    }

    /** Empty where this machine, or the account, may not mount one. */
    static Optional<SmallDisk> mount(String name) throws IOException, InterruptedException {
        Path place = PackagedJar.folder(name);
        Path image = place.resolveSibling(name + ".image");
        boolean mounted = ran("truncate", "-s", MEGABYTES + "M", image.toString())
                && ran("mkfs.ext4", "-q", "-F", "-m", "0", image.toString())
                && ran("mount", "-o", "loop", image.toString(), place.toString());
        return mounted ? Optional.of(new SmallDisk(place)) : Optional.empty();
    }

    private static boolean ran(String... command) throws InterruptedException {
        try {
            return new ProcessBuilder(List.of(command)).inheritIO().start().waitFor() == 0;
        } catch (IOException noSuchProgram) {
            return false;
        }
    }

    /** Where a database may lie. */
    Path folder() throws IOException {
        return Files.createDirectories(place.resolve("database"));
    }

    /** Writes until nothing more goes on it. */
    void fill() throws IOException {
        byte[] much = new byte[1 << 20];
        byte[] little = new byte[1 << 9];
        try (OutputStream filler = Files.newOutputStream(filler())) {
            writeAll(filler, much);
            writeAll(filler, little);
        } catch (IOException full) {
            // closing writes the last of it
        }
        if (Files.getFileStore(place).getUsableSpace() > much.length) {
            throw new IOException("not full: " + Files.getFileStore(place).getUsableSpace());
        }
    }

    private static void writeAll(OutputStream filler, byte[] piece) {
        try {
            while (true) {
                filler.write(piece);
            }
        } catch (IOException full) {
            // that is what was asked for
        }
    }

    void free() throws IOException {
        Files.delete(filler());
    }

    private Path filler() {
        return place.resolve("filler");
    }

    @Override
    public void close() throws IOException, InterruptedException {
        if (!ran("umount", place.toString())) {
            throw new IOException("still mounted: " + place);
        }
    }
}

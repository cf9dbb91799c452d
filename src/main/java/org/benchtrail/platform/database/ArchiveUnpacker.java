package org.benchtrail.platform.database;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Objects;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.tukaani.xz.XZInputStream;

/**
 * Unpacks a tar archive compressed with xz. Keeps symbolic links and the right to execute; everything is readable by the
 * owner only. Refuses whatever would land, or point, outside the folder.
 */
final class ArchiveUnpacker {
    private static final int ANY_EXECUTE = 0111;

    private final Path root;

    private ArchiveUnpacker(Path root) {
        this.root = root;
    }

    /**
     * @param folder exists and is empty
     * @throws IOException if the archive is damaged or has an entry that is refused; the folder is then half filled
     */
    static void unpack(InputStream archive, Path folder) throws IOException {
        ArchiveUnpacker unpacker = new ArchiveUnpacker(folder.toRealPath());
        try (TarArchiveInputStream entries = new TarArchiveInputStream(new XZInputStream(archive))) {
            for (TarArchiveEntry entry = entries.getNextEntry(); entry != null; entry = entries.getNextEntry()) {
                unpacker.place(entry, entries);
            }
        }
    }

    private void place(TarArchiveEntry entry, InputStream content) throws IOException {
        Path file = inside(entry.getName());
        if (entry.isDirectory()) {
            createFolders(file);
            return;
        }
        createFolders(Objects.requireNonNull(file.getParent()));
        if (entry.isSymbolicLink()) {
            Files.createSymbolicLink(file, plainLink(entry));
        } else if (entry.isLink()) {
            Files.createLink(file, inside(entry.getLinkName()));
        } else if (entry.isFile()) {
            Files.copy(content, file);
            grant(file, (entry.getMode() & ANY_EXECUTE) != 0 ? "rwx------" : "rw-------");
        } else {
            throw new IOException("The archive entry " + entry.getName() + " is neither file, folder nor link.");
        }
    }

    /** No entry is placed through a link: {@code link/x} could land elsewhere although its name looks harmless. */
    private Path inside(String name) throws IOException {
        Path target = root.resolve(relative(name)).normalize();
        if (!target.startsWith(root)) {
            throw new IOException("The archive entry " + name + " would land outside the folder.");
        }
        for (Path part = target.getParent(); part != null && part.startsWith(root); part = part.getParent()) {
            if (Files.isSymbolicLink(part)) {
                throw new IOException("The archive entry " + name + " would be placed through a link.");
            }
        }
        return target;
    }

    /** Links that climb are refused as a whole: a chain of them can leave the folder although each one seems to stay inside. */
    private static Path plainLink(TarArchiveEntry entry) throws IOException {
        Path link = relative(entry.getLinkName());
        for (Path part : link) {
            if ("..".equals(part.toString())) {
                throw new IOException("The archive link " + entry.getName() + " leads upwards, to " + link + ".");
            }
        }
        return link;
    }

    private static Path relative(String name) throws IOException {
        try {
            Path path = Path.of(name);
            if (!path.isAbsolute()) {
                return path;
            }
        } catch (InvalidPathException unusable) {
            throw new IOException("The archive has an entry whose name cannot be used here.", unusable);
        }
        throw new IOException("The archive names an absolute path, " + name + ".");
    }

    private void createFolders(Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            return;
        }
        Path parent = folder.getParent();
        if (parent != null) {
            createFolders(parent);
        }
        OwnerOnly.createFolder(folder);
    }

    private static void grant(Path file, String permissions) throws IOException {
        if (OwnerOnly.posix(file)) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
        }
    }
}

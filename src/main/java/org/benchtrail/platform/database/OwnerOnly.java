package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryFlag;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Files and folders that nobody but the owner can enter, read or change, from the moment they exist. */
public final class OwnerOnly {
    private static final Set<PosixFilePermission> FOLDER = PosixFilePermissions.fromString("rwx------");
    private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");

    private OwnerOnly() {}

    /** Creates the folder and missing parents; the folder itself is owner-only, parents are as the system makes them. */
    static void createFolder(Path folder) throws IOException {
        Path parent = folder.getParent();
        if (parent != null) {
            Files.createDirectories(parent);
        }
        Files.createDirectory(folder, permissions(folder, FOLDER));
        restrictWithoutPosix(folder);
    }

    /** Creates a folder whose name begins with {@code prefix} and is new. */
    static Path createFreshFolder(Path parent, String prefix) throws IOException {
        Path folder = Files.createTempDirectory(parent, prefix, permissions(parent, FOLDER));
        restrictWithoutPosix(folder);
        return folder;
    }

    static void restrict(Path folder) throws IOException {
        if (posix(folder)) {
            Files.setPosixFilePermissions(folder, FOLDER);
        } else {
            restrictWithoutPosix(folder);
        }
    }

    /** Writes a new file and forces it to disk; an earlier one of that name is replaced in one step. */
    public static void write(Path file, String content) throws IOException {
        Path fresh = createEmpty(file.resolveSibling(file.getFileName() + ".partial-file"));
        Files.writeString(fresh, content);
        force(fresh, StandardOpenOption.WRITE);
        moveDurably(fresh, file);
    }

    /** Creates an empty file, in place of an earlier one. */
    static Path createEmpty(Path file) throws IOException {
        Files.deleteIfExists(file);
        Files.createFile(file, permissions(file, FILE));
        restrictWithoutPosix(file);
        return file;
    }

    /**
     * Renames in one step and forces the parent folder to disk: without that a power failure could undo the rename, and
     * with it everything that was committed below the new name.
     */
    static void moveDurably(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        Path parent = to.toAbsolutePath().getParent();
        if (parent != null && posix(parent)) {
            force(parent, StandardOpenOption.READ);
        }
    }

    /** Whether anybody but the owner may create, rename or delete files in the folder; unknown counts as no. */
    static boolean writableByOthers(Path folder) throws IOException {
        if (!posix(folder)) {
            return false;
        }
        Set<PosixFilePermission> granted = Files.getPosixFilePermissions(folder);
        return granted.contains(PosixFilePermission.GROUP_WRITE) || granted.contains(PosixFilePermission.OTHERS_WRITE);
    }

    /** Whether anybody but the owner may do anything with the file; unknown counts as no. */
    public static boolean isOpen(Path file) throws IOException {
        return posix(file) && !FOLDER.containsAll(Files.getPosixFilePermissions(file));
    }

    static void deleteTree(Path root) throws IOException {
        Files.walkFileTree(root, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException failure) throws IOException {
                if (failure != null) {
                    throw failure;
                }
                Files.delete(folder);
                return FileVisitResult.CONTINUE;
            }
        });
    }

    static boolean posix(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("posix");
    }

    private static FileAttribute<?>[] permissions(Path where, Set<PosixFilePermission> granted) {
        return posix(where)
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(granted)}
                : new FileAttribute<?>[0];
    }

    private static void force(Path path, StandardOpenOption option) throws IOException {
        try (FileChannel channel = FileChannel.open(path, option)) {
            channel.force(true);
        }
    }

    /** The account's own entry, not the owner's: what an administrator creates may belong to the group of administrators. */
    private static void restrictWithoutPosix(Path path) throws IOException {
        AclFileAttributeView view = Files.getFileAttributeView(path, AclFileAttributeView.class);
        if (posix(path) || view == null) {
            return;
        }
        AclEntry.Builder entry = AclEntry.newBuilder()
                .setType(AclEntryType.ALLOW)
                .setPrincipal(path.getFileSystem()
                        .getUserPrincipalLookupService()
                        .lookupPrincipalByName(System.getProperty("user.name")))
                .setPermissions(EnumSet.allOf(AclEntryPermission.class));
        if (Files.isDirectory(path)) {
            entry.setFlags(AclEntryFlag.FILE_INHERIT, AclEntryFlag.DIRECTORY_INHERIT);
        }
        view.setAcl(List.of(entry.build()));
    }
}

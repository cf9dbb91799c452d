package org.benchtrail.pages;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Text files of the sources. */
final class Sources {
    private static final Path RESOURCES = Path.of("src", "main", "resources");

    private Sources() {}

    /** The templates by their path below {@code templates/}, such as {@code people/me.html}. */
    static SortedMap<String, String> templates() {
        return below(RESOURCES.resolve("templates"), ".html");
    }

    /** The style sheets by their path below {@code css/}. */
    static SortedMap<String, String> styleSheets() {
        return below(RESOURCES.resolve("META-INF/resources/css"), ".css");
    }

    static SortedMap<String, String> scripts() {
        return below(RESOURCES.resolve("META-INF/resources"), ".js");
    }

    static SortedMap<String, String> programs() {
        return below(Path.of("src", "main", "java"), ".java");
    }

    private static SortedMap<String, String> below(Path folder, String ending) {
        SortedMap<String, String> found = new TreeMap<>();
        try (Stream<Path> paths = Files.walk(folder)) {
            for (Path path : paths.filter(p -> p.toString().endsWith(ending)).toList()) {
                String name = folder.relativize(path).toString().replace('\\', '/');
                found.put(name, Files.readString(path, StandardCharsets.UTF_8));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }
}

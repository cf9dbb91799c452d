package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Files that a person can survey, and one meaning for a name. */
@BesideOthers
class SourceShapeTest {
    private static final Path MAIN = Path.of("src/main/java");
    private static final int LONGEST_METHOD = 40;

    /** How many lines a file may have, by the folder that it lies in or below. */
    private static final Map<String, Integer> LONGEST_FILE =
            Map.of("org/benchtrail/ticket", 400, "org/benchtrail/core/method", 300);

    private static List<Path> sources(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".java"))
                    .filter(file -> !file.endsWith("package-info.java"))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void files_areShort() throws IOException {
        List<String> tooLong = new ArrayList<>();
        for (Map.Entry<String, Integer> limit : LONGEST_FILE.entrySet()) {
            List<Path> files = sources(MAIN.resolve(limit.getKey()));
            assertTrue(files.size() > 20, limit::getKey);
            for (Path file : files) {
                int lines = Files.readAllLines(file, StandardCharsets.UTF_8).size();
                if (lines > limit.getValue()) {
                    tooLong.add(file + ": " + lines);
                }
            }
        }
        assertEquals(List.of(), tooLong);
    }

    /** Practice is nothing that happened: no statement of another room reads or writes it. */
    @Test
    void practice_isKnownToTrainingAlone() throws IOException {
        assertEquals(Set.of("training"), roomsThatName("practice_"));
    }

    /** What people forecast is for their own eyes: no statement of another room reads it. */
    @Test
    void forecasts_areKnownToTrainingAlone() throws IOException {
        assertEquals(Set.of("training"), roomsThatName("forecast.content"));
        assertEquals(Set.of("training"), roomsThatName("forecast.person"));
    }

    /** So are answers to the questions of a shift. */
    @Test
    void recall_isKnownToTrainingAlone() throws IOException {
        assertEquals(Set.of("training"), roomsThatName("recall.answer"));
        assertEquals(Set.of("training"), roomsThatName("recall.person"));
    }

    private static Set<String> roomsThatName(String name) throws IOException {
        Set<String> rooms = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main"))) {
            for (Path file :
                    files.filter(f -> f.toString().matches(".*\\.(sql|java)")).toList()) {
                if (Files.readString(file, StandardCharsets.UTF_8).contains(name)) {
                    rooms.add(file.getParent().getFileName().toString());
                }
            }
        }
        return rooms;
    }

    @Test
    void methods_areShort() throws IOException {
        List<String> tooLong = new ArrayList<>();
        int methods = 0;
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            JavacTask task = (JavacTask) compiler.getTask(
                    null, files, null, List.of("-proc:none"), null, files.getJavaFileObjectsFromPaths(sources(MAIN)));
            SourcePositions positions = Trees.instance(task).getSourcePositions();
            for (CompilationUnitTree unit : task.parse()) {
                Methods found = new Methods(unit, positions);
                found.scan(unit, null);
                methods += found.lines.size();
                found.lines.forEach((method, lines) -> {
                    if (lines > LONGEST_METHOD) {
                        tooLong.add(method + ": " + lines);
                    }
                });
            }
        }
        assertTrue(methods > 1_000, "only " + methods + " methods were seen");
        assertEquals(List.of(), tooLong);
    }

    /** The methods of a file with their lines, those of one name as the longest. */
    private static final class Methods extends TreeScanner<@Nullable Void, @Nullable Void> {
        private final Map<String, Long> lines = new TreeMap<>();
        private final CompilationUnitTree unit;
        private final SourcePositions positions;
        private final String file;

        Methods(CompilationUnitTree unit, SourcePositions positions) {
            this.unit = unit;
            this.positions = positions;
            String name = Path.of(unit.getSourceFile().getName()).getFileName().toString();
            file = name.substring(0, name.length() - ".java".length());
        }

        @Override
        public @Nullable Void visitMethod(MethodTree method, @Nullable Void nothing) {
            LineMap map = unit.getLineMap();
            long from = map.getLineNumber(positions.getStartPosition(unit, method));
            long to = map.getLineNumber(positions.getEndPosition(unit, method));
            lines.merge(file + "." + method.getName(), to - from + 1, Math::max);
            return super.visitMethod(method, nothing);
        }
    }

    @Test
    void aName_standsForOneThing() {
        Set<String> seen = new TreeSet<>();
        Set<String> twice = new TreeSet<>();
        sources(MAIN).forEach(file -> {
            String name = file.getFileName().toString();
            if (!seen.add(name)) {
                twice.add(name);
            }
        });
        assertEquals(Set.of(), twice);
    }
}

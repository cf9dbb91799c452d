package org.benchtrail.catalogue;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.path.CategoryPaths;
import org.benchtrail.core.diagnosis.path.PathCatalogue;
import org.benchtrail.core.diagnosis.path.PathRules;
import org.benchtrail.platform.YamlNode;

/**
 * The paths that go with a catalogue as a YAML file. The keys are explained at the head of {@code diagnosis/paths.yaml}. A file
 * is taken whole or not at all, and everything wrong with it is told at once.
 *
 * @param paths empty if there are faults
 * @param faults by row
 */
public record PathsFile(Optional<PathCatalogue> paths, List<CatalogueFile.Fault> faults) {
    /** The paths that are delivered with the server. */
    public static final String DELIVERED = "/diagnosis/paths.yaml";

    /** @param catalogue that the paths go with */
    public static PathsFile read(String yaml, Catalogue catalogue) {
        return read(yaml, catalogue, FileFaults.Unknown.IS_A_FAULT);
    }

    static PathsFile read(String yaml, Catalogue catalogue, FileFaults.Unknown unknown) {
        FileFaults file = new FileFaults(unknown);
        List<CategoryPaths> categories;
        try {
            categories = new PathEntries(file).categories(YamlNode.parse(yaml));
        } catch (JsonProcessingException e) {
            int row = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNr());
            return refused(List.of(new CatalogueFile.Fault(row, "", "mend the YAML here: " + e.getOriginalMessage())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<CatalogueFile.Fault> faults = new ArrayList<>(file.faults());
        for (Invalid.Problem p : PathRules.problems(categories, catalogue.categories())) {
            if (!file.isReported(p.field())) {
                faults.add(new CatalogueFile.Fault(file.row(p.field()), p.field(), p.sentence()));
            }
        }
        faults.sort(Comparator.comparingInt(CatalogueFile.Fault::row));
        return faults.isEmpty()
                ? new PathsFile(Optional.of(new PathCatalogue(categories)), List.of())
                : refused(faults);
    }

    /** @throws IllegalStateException if the delivered file is not acceptable beside the delivered catalogue: a broken build */
    public static PathCatalogue delivered() {
        PathsFile file = read(deliveredText(), CatalogueFile.delivered());
        return file.paths().orElseThrow(() -> new IllegalStateException(DELIVERED + ": " + file.faults()));
    }

    static String deliveredText() {
        try (InputStream in = PathsFile.class.getResourceAsStream(DELIVERED)) {
            return new String(Objects.requireNonNull(in, DELIVERED).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PathsFile refused(List<CatalogueFile.Fault> faults) {
        return new PathsFile(Optional.empty(), List.copyOf(faults));
    }
}

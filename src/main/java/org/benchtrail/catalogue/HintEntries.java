package org.benchtrail.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.diagnosis.Feed;
import org.benchtrail.core.diagnosis.Hints;
import org.benchtrail.core.diagnosis.Phrase;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.QuantityWords;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.platform.YamlNode;

/** Turns what a catalogue file says of recorded facts and of words into entries. */
final class HintEntries {
    private static final Set<String> KEYS = Set.of(
            "changed",
            "scope",
            "hazard",
            "comesAndGoes",
            "driveFailure",
            "bench",
            "readIn",
            "signal",
            "reading",
            "unit",
            "without",
            "finding",
            "value",
            "source",
            "YES",
            "NO",
            "present",
            "presentSource",
            "absent",
            "absentSource");

    private final FileFaults file;
    private final List<Feed> feeds = new ArrayList<>();
    private final List<QuantityWords> readings = new ArrayList<>();

    HintEntries(FileFaults file) {
        this.file = file;
    }

    Hints of(EntryReader category) {
        category.list("feeds", this::feed);
        return new Hints(feeds, readings, category.list("phrases", this::phrases), category.texts("complaints"));
    }

    private Phrases phrases(YamlNode node, String at) {
        EntryReader e = new EntryReader(file, node, at, Set.of("finding", "value", "words"));
        return new Phrases(
                e.text("finding"),
                e.text("value"),
                e.texts("words").stream().map(Phrase::of).toList());
    }

    /** One row may make several: each answer that a fact can give is a sign of its own. */
    private boolean feed(YamlNode node, String at) {
        EntryReader e = new EntryReader(file, node, at, KEYS);
        String finding = e.text("finding");
        if (e.find("reading") != null) {
            return readings.add(new QuantityWords(e.texts("reading"), e.text("unit"), e.texts("without"), finding));
        }
        if (e.find("hazard") != null) {
            String sign = "hazard/" + e.text("hazard");
            answer(e, sign + "/present", finding, "present", "presentSource");
            return answer(e, sign + "/absent", finding, "absent", "absentSource");
        }
        if (e.find("changed") != null) {
            String sign = "changed/" + e.text("changed");
            answer(e, sign + "/YES", finding, "YES", "source");
            return answer(e, sign + "/NO", finding, "NO", "source");
        }
        signs(e, at).forEach(sign -> answer(e, sign, finding, "value", "source"));
        return true;
    }

    private boolean answer(EntryReader e, String sign, String finding, String value, String source) {
        return feeds.add(new Feed(sign, finding, e.text(value, ""), e.word(source, Source.class, null)));
    }

    private List<String> signs(EntryReader e, String at) {
        if (e.find("scope") != null) {
            return scopes(e).stream().map(scope -> "scope/" + scope).toList();
        }
        if (e.find("comesAndGoes") != null) {
            return List.of("comes-and-goes/" + e.flag("comesAndGoes", true));
        }
        if (e.find("driveFailure") != null) {
            return List.of("drive-failure/" + e.flag("driveFailure", true));
        }
        if (e.find("readIn") != null) {
            return List.of("read-in/" + e.text("readIn"));
        }
        if (e.find("bench") != null) {
            return List.of("bench/" + e.text("bench") + "/" + e.text("signal"));
        }
        file.fault(
                file.row(at),
                at,
                "name what feeds it: changed, scope, hazard, comesAndGoes, driveFailure, reading, bench or readIn");
        return List.of();
    }

    private List<String> scopes(EntryReader e) {
        YamlNode scope = e.find("scope");
        return scope != null && scope.items() != null ? e.texts("scope") : List.of(e.text("scope"));
    }
}

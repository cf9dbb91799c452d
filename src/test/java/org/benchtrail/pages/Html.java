package org.benchtrail.pages;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;

/** A page as a browser reads it, and what is wrong with how it is written. */
public final class Html {
    private static final int MOST_FAULTS = 20;
    private static final List<String> REFERENCES =
            List.of("for", "list", "form", "aria-labelledby", "aria-describedby", "aria-controls", "aria-owns");

    private Html() {}

    public static Document read(String page) {
        return Jsoup.parse(page);
    }

    /**
     * Where the page breaks the syntax of HTML, names two things alike, or points at what is not there.
     *
     * @return empty for a page without a fault
     */
    public static List<String> faults(String page) {
        Parser parser = Parser.htmlParser().setTrackErrors(MOST_FAULTS);
        Document document = parser.parseInput(page, "");
        List<String> faults = new ArrayList<>();
        parser.getErrors().forEach(error -> faults.add(error.toString()));
        Set<String> ids = new HashSet<>();
        for (Element element : document.select("[id]")) {
            if (!ids.add(element.id())) {
                faults.add("two elements have the id " + element.id());
            }
        }
        for (String reference : REFERENCES) {
            document.select("[" + reference + "]").stream()
                    .flatMap(element -> Stream.of(element.attr(reference).split(" ")))
                    .filter(id -> !ids.contains(id))
                    .forEach(id -> faults.add(reference + " names " + id + ", which is not on the page"));
        }
        document.select("a[href^=#]").stream()
                .map(link -> link.attr("href").substring(1))
                .filter(id -> !ids.contains(id))
                .forEach(id -> faults.add("a link leads to " + id + ", which is not on the page"));
        return faults;
    }
}

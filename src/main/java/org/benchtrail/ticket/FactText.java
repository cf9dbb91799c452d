package org.benchtrail.ticket;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.platform.Option;
import org.jspecify.annotations.Nullable;

/** Any fact in plain words: what kind it is, and each thing it says. */
public final class FactText {
    private FactText() {}

    /** One thing a fact says. */
    public record Part(String name, String text) {}

    /** The kind in words, such as "symptom recorded". */
    public static String kind(Fact fact) {
        return FactKinds.name(fact.getClass()).replace('-', ' ');
    }

    public static List<Part> parts(Fact fact, ZoneId zone) {
        if (fact instanceof Refused refused) {
            return List.of(
                    new Part("act", refused.act().replace('-', ' ')),
                    new Part(
                            "missing",
                            refused.missing().stream().map(Told::requirement).collect(Collectors.joining("; "))));
        }
        List<Part> parts = new ArrayList<>();
        for (RecordComponent component : fact.getClass().getRecordComponents()) {
            String plain = text(FactKinds.value(fact, component), zone);
            String text =
                    component.getName().equals("requirement") && !plain.isEmpty() ? Told.requirement(plain) : plain;
            if (!text.isEmpty()) {
                parts.add(new Part(name(component.getName()), text));
            }
        }
        return parts;
    }

    private static String name(String component) {
        return component.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }

    private static String text(@Nullable Object value, ZoneId zone) {
        if (value == null) {
            return "";
        }
        if (value instanceof Boolean yes) {
            return yes ? "yes" : "no";
        }
        if (value instanceof Enum<?> constant) {
            return Option.words(constant);
        }
        if (value instanceof Instant at) {
            return Times.text(at, zone);
        }
        if (value instanceof Map<?, ?> map) {
            return map.entrySet().stream()
                    .map(e -> text(e.getKey(), zone) + ": " + text(e.getValue(), zone))
                    .collect(Collectors.joining(", "));
        }
        if (value instanceof Collection<?> many) {
            return many.stream().map(v -> text(v, zone)).collect(Collectors.joining(", "));
        }
        if (value instanceof Fact fact) {
            return parts(fact, zone).stream()
                    .map(p -> p.name() + ": " + p.text())
                    .collect(Collectors.joining("; "));
        }
        if (value instanceof Record record) {
            return Stream.of(record.getClass().getRecordComponents())
                    .map(component -> text(FactKinds.value(record, component), zone))
                    .filter(t -> !t.isEmpty() && !t.equals("1"))
                    .collect(Collectors.joining(" "));
        }
        return value.toString();
    }
}

package org.benchtrail.core.method;

import java.lang.reflect.RecordComponent;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.method.desk.DeskFact;
import org.benchtrail.core.method.document.DocumentFact;
import org.benchtrail.core.method.identify.IdentifyFact;
import org.benchtrail.core.method.plan.PlanFact;
import org.benchtrail.core.method.test.TestFact;
import org.benchtrail.core.method.theorize.TheorizeFact;
import org.benchtrail.core.method.verify.VerifyFact;
import org.benchtrail.core.text.KindName;
import org.jspecify.annotations.Nullable;

/**
 * The kinds of entry by their stable names: {@code symptom-recorded} for {@code SymptomRecorded}, and so on for every
 * record of the sealed set of facts.
 */
public final class FactKinds {
    /** All that there are: a fact belongs to the step whose question it answers, or to the desk. */
    static final List<Class<? extends Fact>> GROUPS = List.of(
            IdentifyFact.class,
            TheorizeFact.class,
            TestFact.class,
            PlanFact.class,
            VerifyFact.class,
            DocumentFact.class,
            DeskFact.class);

    private static final Map<String, Class<? extends Fact>> BY_NAME = Collections.unmodifiableMap(collect());

    private FactKinds() {}

    public static Map<String, Class<? extends Fact>> all() {
        return BY_NAME;
    }

    public static String name(Class<? extends Fact> kind) {
        return KindName.of(kind);
    }

    /** Whether only the server itself records facts of that kind. */
    public static boolean isServerOnly(Class<? extends Fact> kind) {
        return kind.isAnnotationPresent(ServerOnly.class);
    }

    /** The fields of a fact that only the server fills, with what to tell whoever posts them; {@code kind} for all of it. */
    public static Map<String, String> serverOnly(Fact fact) {
        String kind = name(fact.getClass());
        if (isServerOnly(fact.getClass())) {
            return Map.of("kind", "The server itself records '" + kind + "'.");
        }
        Map<String, String> fields = new TreeMap<>();
        for (RecordComponent component : fact.getClass().getRecordComponents()) {
            ServerOnly only = component.getAnnotation(ServerOnly.class);
            if (only != null && value(fact, component) != null) {
                fields.put(component.getName(), only.value());
            }
        }
        return fields;
    }

    /** What a component of a fact, or of a record in it, says. */
    public static @Nullable Object value(Object record, RecordComponent component) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Map<String, Class<? extends Fact>> collect() {
        Map<String, Class<? extends Fact>> found = new TreeMap<>();
        GROUPS.forEach(group -> collect(group, found));
        return found;
    }

    private static void collect(Class<?> sealed, Map<String, Class<? extends Fact>> found) {
        for (Class<?> permitted : sealed.getPermittedSubclasses()) {
            if (permitted.isRecord()) {
                found.put(name(permitted.asSubclass(Fact.class)), permitted.asSubclass(Fact.class));
            } else {
                collect(permitted, found);
            }
        }
    }
}

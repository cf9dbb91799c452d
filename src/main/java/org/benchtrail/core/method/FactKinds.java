package org.benchtrail.core.method;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.method.desk.DeskFact;
import org.benchtrail.core.method.document.DocumentFact;
import org.benchtrail.core.method.identify.IdentifyFact;
import org.benchtrail.core.method.plan.PlanFact;
import org.benchtrail.core.method.test.TestFact;
import org.benchtrail.core.method.theorize.TheorizeFact;
import org.benchtrail.core.method.verify.VerifyFact;

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
        return kind.getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
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

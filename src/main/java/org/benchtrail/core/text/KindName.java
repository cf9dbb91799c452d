package org.benchtrail.core.text;

import java.util.Locale;

/** The stable name of a kind of record: {@code symptom-recorded} for {@code SymptomRecorded}. It is stored, and never changes. */
public final class KindName {
    /** Each made once: it is asked for with every entry that is read or held against its row. */
    private static final ClassValue<String> NAMES = new ClassValue<>() {
        @Override
        protected String computeValue(Class<?> kind) {
            return kind.getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
        }
    };

    private KindName() {}

    public static String of(Class<?> kind) {
        return NAMES.get(kind);
    }
}

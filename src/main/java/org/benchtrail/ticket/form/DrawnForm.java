package org.benchtrail.ticket.form;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.method.Fact;
import org.benchtrail.platform.Option;

/**
 * How a form of one fact is shown that needs no template: folded below its step, with a field for each component that it asks for,
 * and what was recorded of that kind above them. A component that is a map, a list, a set, a time or a record has no field here.
 *
 * @param group of its fields
 * @param title what it is for, on the line that opens it
 * @param hint beside the title, when it is the right one
 * @param button what sends it
 */
public record DrawnForm(FieldGroup<?> group, String title, String hint, String button, List<Field> fields) {

    /**
     * One field, of the kind that its component's type asks for.
     *
     * @param name of the field in the form, as {@code rethink.reason}
     * @param options of a choice
     */
    public record Field(String name, String label, Kind kind, List<Option> options) {}

    /** What somebody types or chooses in. */
    public enum Kind {
        LINE,
        PARAGRAPH,
        NUMBER,
        TICK,
        CHOICE
    }

    /**
     * A component that the form asks for.
     *
     * @param isLong whether its text has more than a line
     */
    public record Asked(String component, String label, boolean isLong) {
        Field of(FieldGroup<? extends Fact> group) {
            Class<?> type = Stream.of(group.kind().getRecordComponents())
                    .filter(c -> c.getName().equals(component))
                    .findFirst()
                    .map(RecordComponent::getType)
                    .orElseThrow(() -> new IllegalArgumentException(
                            group.kind().getSimpleName() + " has no component " + component));
            if (!isDrawable(type)) {
                throw new IllegalArgumentException(component + " of "
                        + group.kind().getSimpleName() + " is of type "
                        + type.getSimpleName() + ", and a drawn form has fields for texts, numbers, a yes or no, and"
                        + " choices alone: give it fields in the template of its step.");
            }
            return new Field(group.name() + "." + component, label, kind(type), options(type));
        }

        private static boolean isDrawable(Class<?> type) {
            return type.isEnum()
                    || type.isPrimitive()
                    || type == Boolean.class
                    || type == String.class
                    || Number.class.isAssignableFrom(type);
        }

        private Kind kind(Class<?> type) {
            if (type.isEnum()) {
                return Kind.CHOICE;
            }
            if (type == boolean.class || type == Boolean.class) {
                return Kind.TICK;
            }
            if (type == String.class) {
                return isLong ? Kind.PARAGRAPH : Kind.LINE;
            }
            return Kind.NUMBER;
        }

        @SuppressWarnings({"unchecked", "rawtypes"})
        private static List<Option> options(Class<?> type) {
            return type.isEnum() ? Option.of((Class<Enum>) type) : List.of();
        }
    }

    /** A component in a line, a tick, a number or a choice: whatever its type asks for. */
    public static Asked field(String component, String label) {
        return new Asked(component, label, false);
    }

    /** A component in as many lines as one likes. */
    public static Asked paragraph(String component, String label) {
        return new Asked(component, label, true);
    }
}

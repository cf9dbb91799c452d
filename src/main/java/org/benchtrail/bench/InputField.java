package org.benchtrail.bench;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.platform.Option;

/**
 * What a calculation asks for: one component of its input record.
 *
 * @param unit symbol of the unit the number is given in; empty for a pure number, a choice or a text
 * @param lines how many lines a text is likely to have
 * @param required whether leaving it empty is refused; a text may be empty, its calculation decides
 * @param options the choices, for {@link Kind#CHOICE}
 * @param fields what each row asks for, for {@link Kind#ROWS}
 */
record InputField(
        String name,
        String label,
        String unit,
        String hint,
        int lines,
        Kind kind,
        boolean required,
        Class<?> type,
        List<Option> options,
        List<InputField> fields) {

    enum Kind {
        NUMBER,
        WHOLE,
        TICK,
        CHOICE,
        TEXT,
        /** Numbers of one kind, as many as there are. */
        NUMBERS,
        /** Records of one kind, as many as there are. */
        ROWS
    }

    /** The components of an input record, in its order. */
    static List<InputField> of(Class<? extends Record> input) {
        return Arrays.stream(input.getRecordComponents()).map(InputField::of).toList();
    }

    private static InputField of(RecordComponent component) {
        Ask ask = component.getAnnotation(Ask.class);
        if (ask == null) {
            throw new IllegalArgumentException(component + " says nothing about how it is asked for");
        }
        Kind kind = kind(component);
        Class<?> type = kind == Kind.ROWS || kind == Kind.NUMBERS ? entryType(component) : component.getType();
        return new InputField(
                component.getName(),
                ask.label(),
                ask.unit().equals("1") ? "" : ask.unit(),
                ask.hint(),
                ask.lines(),
                kind,
                (component.getType().isPrimitive() && kind != Kind.TICK) || kind == Kind.CHOICE,
                type,
                kind == Kind.CHOICE ? ChoiceWords.options(type) : List.of(),
                kind == Kind.ROWS ? of(type.asSubclass(Record.class)) : List.of());
    }

    private static Kind kind(RecordComponent component) {
        Class<?> type = component.getType();
        if (type == double.class || type == Double.class) {
            return Kind.NUMBER;
        }
        if (type == int.class) {
            return Kind.WHOLE;
        }
        if (type == boolean.class) {
            return Kind.TICK;
        }
        if (type == String.class) {
            return Kind.TEXT;
        }
        if (type == List.class) {
            return entryType(component).isRecord() ? Kind.ROWS : Kind.NUMBERS;
        }
        if (type.isEnum()) {
            return Kind.CHOICE;
        }
        throw new IllegalArgumentException("the bench cannot ask for " + component);
    }

    private static Class<?> entryType(RecordComponent list) {
        return (Class<?>) ((ParameterizedType) list.getGenericType()).getActualTypeArguments()[0];
    }
}

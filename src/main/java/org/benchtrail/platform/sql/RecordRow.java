package org.benchtrail.platform.sql;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hibernate.query.TupleTransformer;
import org.jspecify.annotations.Nullable;

/** A row as a record: each component from the column of its name, whatever the order of either. */
final class RecordRow<R extends Record> implements TupleTransformer<R> {
    private final Constructor<R> constructor;
    private final Class<?>[] types;
    private final String[] columns;
    private int[] places = {};

    private RecordRow(Constructor<R> constructor, Class<?>[] types, String[] columns) {
        this.constructor = constructor;
        this.types = types;
        this.columns = columns;
    }

    static <R extends Record> RecordRow<R> of(Class<R> type) {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        String[] columns =
                Arrays.stream(components).map(c -> column(c.getName())).toArray(String[]::new);
        try {
            Constructor<R> constructor = type.getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return new RecordRow<>(constructor, types, columns);
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException("a record has the constructor of its components", e);
        }
    }

    /** @throws IllegalArgumentException if a column is missing, or holds what its component cannot */
    @Override
    public R transformTuple(@Nullable Object[] row, String[] names) {
        if (places.length == 0) {
            places = places(List.of(names));
        }
        Object[] values = new Object[columns.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = fit(types[i], row[places[i]]);
            if (values[i] == null && types[i].isPrimitive()) {
                throw new IllegalArgumentException("column " + columns[i] + " is null");
            }
        }
        try {
            return constructor.newInstance(values);
        } catch (InvocationTargetException e) {
            throw e.getCause() instanceof RuntimeException own ? own : new IllegalStateException(e.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Where each component's column stands among those of the result. */
    private int[] places(List<String> names) {
        return Arrays.stream(columns)
                .mapToInt(column -> {
                    int place = names.indexOf(column);
                    if (place < 0) {
                        throw new IllegalArgumentException("no column " + column + " among " + names);
                    }
                    return place;
                })
                .toArray();
    }

    private static String column(String component) {
        return component.replaceAll("(?<=[a-z0-9])(?=[A-Z])", "_").toLowerCase(Locale.ROOT);
    }

    /** What the driver gives, as the type that is wanted. */
    static @Nullable Object fit(Class<?> wanted, @Nullable Object given) {
        if (given == null) {
            return null;
        }
        if (wanted.isEnum()) {
            return constant(wanted, (String) given);
        }
        if (wanted == List.class) {
            return List.of((Object[]) given);
        }
        if (given instanceof Number number) {
            return number(wanted, number);
        }
        return given;
    }

    private static Object constant(Class<?> of, String name) {
        return Arrays.stream(of.getEnumConstants())
                .filter(c -> ((Enum<?>) c).name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(name + " is no " + of.getSimpleName()));
    }

    private static Object number(Class<?> wanted, Number given) {
        if (wanted == int.class || wanted == Integer.class) {
            return Math.toIntExact(given.longValue());
        }
        if (wanted == long.class || wanted == Long.class) {
            return given.longValue();
        }
        return wanted == double.class || wanted == Double.class ? (Object) given.doubleValue() : given;
    }
}

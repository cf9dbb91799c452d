package org.benchtrail.core.bench;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Walks the numbers of a record, nested records and lists included, and makes copies with one of them changed. */
final class Mutation {
    private final List<String> paths = new ArrayList<>();
    private final List<String> units = new ArrayList<>();
    private final DoubleUnaryOperator change;
    private final int target;
    private final boolean all;

    private Mutation(DoubleUnaryOperator change, int target, boolean all) {
        this.change = change;
        this.target = target;
        this.all = all;
    }

    /** One number of a record: where it is and the unit it is asked for in. */
    record Place(int index, String path, String unit) {}

    static List<Place> places(Record record) throws Throwable {
        Mutation walk = new Mutation(x -> x, -1, false);
        walk.copy(record, "");
        List<Place> places = new ArrayList<>();
        for (int i = 0; i < walk.paths.size(); i++) {
            places.add(new Place(i, walk.paths.get(i), walk.units.get(i)));
        }
        return places;
    }

    /** A copy with {@code value} at that place; throws what the record's constructor throws. */
    static Record with(Record record, Place place, double value) throws Throwable {
        return new Mutation(x -> value, place.index(), false).copy(record, "");
    }

    static Record each(Record record, DoubleUnaryOperator change) throws Throwable {
        return new Mutation(change, -1, true).copy(record, "");
    }

    private Record copy(Record record, String prefix) throws Throwable {
        RecordComponent[] components = record.getClass().getRecordComponents();
        Object[] values = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            components[i].getAccessor().setAccessible(true);
            Object value = components[i].getAccessor().invoke(record);
            String unit = components[i].getAnnotation(Ask.class).unit();
            values[i] = changed(value, prefix + components[i].getName(), unit);
        }
        return construct(record, components, values);
    }

    private static Record construct(Record record, RecordComponent[] components, Object[] values) throws Throwable {
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class[]::new);
        Constructor<?> constructor = record.getClass().getDeclaredConstructor(types);
        constructor.setAccessible(true);
        try {
            return (Record) constructor.newInstance(values);
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    private Object changed(Object value, String path, String unit) throws Throwable {
        if (value instanceof Double number) {
            paths.add(path);
            units.add(unit);
            return all || paths.size() - 1 == target ? change.applyAsDouble(number) : number;
        }
        if (value instanceof Record nested) {
            return copy(nested, path + ".");
        }
        if (value instanceof List<?> list) {
            List<Object> copy = new ArrayList<>();
            for (int i = 0; i < list.size(); i++) {
                Object entry = list.get(i);
                String at = path + "[" + i + "]";
                copy.add(entry instanceof Record nested ? copy(nested, at + ".") : changed(entry, at, unit));
            }
            return copy;
        }
        return value;
    }
}
